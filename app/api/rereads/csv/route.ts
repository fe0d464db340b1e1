import { downloadRereads } from "../../../_server/load-rereads";

export function GET(): Promise<Response> {
  return downloadRereads();
}
