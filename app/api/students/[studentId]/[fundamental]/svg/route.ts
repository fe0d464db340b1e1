import { downloadChart } from "../../../../../_server/archive/load-chart";
import { chartFile } from "../../../../../_ui/chart-file/chart-file";

export async function GET(
  request: Request,
  { params }: { readonly params: Promise<{ readonly studentId: string; readonly fundamental: string }> },
): Promise<Response> {
  return downloadChart(await params, new URL(request.url).searchParams, chartFile);
}
