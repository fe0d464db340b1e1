import { downloadRereadPlot } from "../../../../_server/archive/load-chart";
import { plotFile } from "../../../../_ui/chart-file/plot-file";

export async function GET(
  request: Request,
  { params }: { readonly params: Promise<{ readonly fundamental: string }> },
): Promise<Response> {
  return downloadRereadPlot((await params).fundamental, new URL(request.url).searchParams, plotFile);
}
