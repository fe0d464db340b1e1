import { downloadReadings } from "../../../../_server/archive/load-downloads";

export async function GET(
  _request: Request,
  { params }: { readonly params: Promise<{ readonly studentId: string }> },
): Promise<Response> {
  return downloadReadings((await params).studentId);
}
