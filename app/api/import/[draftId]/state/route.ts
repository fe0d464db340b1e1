import { tellRunning } from "../../../../_server/import/import-running";

export async function GET(
  _request: Request,
  { params }: { readonly params: Promise<{ readonly draftId: string }> },
): Promise<Response> {
  return tellRunning((await params).draftId);
}
