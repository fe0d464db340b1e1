import { downloadRoster } from "../../../_server/archive/load-downloads";

export function GET(): Promise<Response> {
  return downloadRoster();
}
