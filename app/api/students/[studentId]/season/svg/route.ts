import { downloadSeasonChart } from "../../../../../_server/archive/load-chart";
import { seasonFile } from "../../../../../_ui/chart-file/season-file";

export async function GET(
  request: Request,
  { params }: { readonly params: Promise<{ readonly studentId: string }> },
): Promise<Response> {
  return downloadSeasonChart((await params).studentId, new URL(request.url).searchParams, seasonFile);
}
