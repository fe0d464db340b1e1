import { moveDraftFrom } from "../../../_server/draft/draft-door";

export function POST(request: Request): Promise<Response> {
  return moveDraftFrom(request, "unfinished");
}
