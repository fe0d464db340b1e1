import { receiveUpload } from "../../_server/receive-upload";

export function POST(request: Request): Promise<Response> {
  return receiveUpload(request);
}
