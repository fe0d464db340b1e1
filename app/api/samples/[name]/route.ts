import { sendSample } from "../../../_server/import/send-sample";

export async function GET(
  _request: Request,
  { params }: { readonly params: Promise<{ readonly name: string }> },
): Promise<Response> {
  return sendSample((await params).name);
}
