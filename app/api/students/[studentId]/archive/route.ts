import { downloadArchive } from "../../../../_server/archive/load-take-out";

export async function GET(
  request: Request,
  { params }: { readonly params: Promise<{ readonly studentId: string }> },
): Promise<Response> {
  return downloadArchive((await params).studentId, new URL(request.url).searchParams.get("table"));
}
