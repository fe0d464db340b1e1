import { openFamily } from "@/app/_server/family/open-family";

export async function GET(request: Request, { params }: { readonly params: Promise<{ readonly token: string }> }) {
  return openFamily(request, (await params).token);
}
