import { tellAtDoor } from "@/app/_server/import/import-door";

export async function GET(
  request: Request,
  { params }: { readonly params: Promise<{ readonly batchId: string }> },
): Promise<Response> {
  return tellAtDoor(request, (await params).batchId);
}
