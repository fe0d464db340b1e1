import { downloadSpread } from "../../../../_server/archive/load-chart";
import { spreadFile } from "../../../../_ui/chart-file/spread-file";

export async function GET(
  request: Request,
  { params }: { readonly params: Promise<{ readonly fundamental: string }> },
): Promise<Response> {
  return downloadSpread((await params).fundamental, new URL(request.url).searchParams, spreadFile);
}
