import { downloadRoster } from "../../../_server/archive/load-downloads";

export function GET(request: Request): Promise<Response> {
  return downloadRoster(new URL(request.url).searchParams);
}
