import { downloadContactChart } from "../../../../../_server/archive/load-chart";
import { chartFile } from "../../../../../_ui/chart-file/chart-file";

export async function GET(
  request: Request,
  { params }: { readonly params: Promise<{ readonly studentId: string }> },
): Promise<Response> {
  return downloadContactChart((await params).studentId, new URL(request.url).searchParams, chartFile);
}
