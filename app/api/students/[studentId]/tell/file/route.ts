import { downloadFamilyFile } from "../../../../../_server/family/download-family-file";
import { familyFile } from "../../../../../_ui/chart-file/family-file";

export async function GET(
  _request: Request,
  { params }: { readonly params: Promise<{ readonly studentId: string }> },
): Promise<Response> {
  return downloadFamilyFile((await params).studentId, familyFile);
}
