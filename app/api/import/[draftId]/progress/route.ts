import { sendProgress } from "../../../../_server/import/load-import";

export async function GET(
  _request: Request,
  { params }: { readonly params: Promise<{ readonly draftId: string }> },
): Promise<Response> {
  return sendProgress((await params).draftId);
}
