import { downloadRows } from "../../../../_server/import/load-import";

export async function GET(
  _request: Request,
  { params }: { readonly params: Promise<{ readonly draftId: string }> },
): Promise<Response> {
  return downloadRows((await params).draftId, "rest");
}
