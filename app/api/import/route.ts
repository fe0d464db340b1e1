import { receiveUpload } from "../../_server/import/receive-upload";

export function POST(request: Request): Promise<Response> {
  return receiveUpload(request);
}
