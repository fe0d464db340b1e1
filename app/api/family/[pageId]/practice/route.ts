import { takeFamilyPractice } from "@/app/_server/family/family-desk";
import { receiveFamily } from "@/app/_server/family/receive-family";

export async function POST(request: Request, { params }: { readonly params: Promise<{ readonly pageId: string }> }) {
  return receiveFamily("POST /api/family/[pageId]/practice", request, (await params).pageId, takeFamilyPractice);
}
