import { downloadLooked } from "../../../../../_server/access/load-looked";

export async function GET(
  _request: Request,
  { params }: { readonly params: Promise<{ readonly studentId: string }> },
): Promise<Response> {
  return downloadLooked((await params).studentId);
}
