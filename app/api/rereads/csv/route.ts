import { downloadRereads } from "../../../_server/reread/load-rereads";

export function GET(): Promise<Response> {
  return downloadRereads();
}
