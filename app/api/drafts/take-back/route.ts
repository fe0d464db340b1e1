import { moveDraftFrom } from "../../../_server/draft-door";

export function POST(request: Request): Promise<Response> {
  return moveDraftFrom(request, "unfinished");
}
