import { receiveDraft } from "../../_server/draft/draft-door";

export function POST(request: Request): Promise<Response> {
  return receiveDraft(request);
}
