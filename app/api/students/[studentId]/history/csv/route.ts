import { downloadHistory } from "../../../../../_server/session/load-history";

export async function GET(
  _request: Request,
  { params }: { readonly params: Promise<{ readonly studentId: string }> },
): Promise<Response> {
  return downloadHistory((await params).studentId);
}
