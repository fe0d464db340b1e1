import { downloadJudged } from "../../../../../_server/archive/load-judged";

export async function GET(
  request: Request,
  { params }: { readonly params: Promise<{ readonly studentId: string; readonly fundamental: string }> },
): Promise<Response> {
  return downloadJudged(await params, new URL(request.url).searchParams);
}
