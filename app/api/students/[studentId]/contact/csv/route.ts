import { downloadContact } from "../../../../../_server/archive/load-downloads";

export async function GET(
  request: Request,
  { params }: { readonly params: Promise<{ readonly studentId: string }> },
): Promise<Response> {
  const club = new URL(request.url).searchParams.get("club");
  return downloadContact((await params).studentId, club ?? undefined);
}
