import { downloadTable } from "../../_server/archive/load-table";

export async function GET(request: Request): Promise<Response> {
  return downloadTable(new URL(request.url).searchParams);
}
