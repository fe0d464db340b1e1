import { downloadRoster } from "../../../_server/load-downloads";

export function GET(): Promise<Response> {
  return downloadRoster();
}
