import { receiveJoin } from "@/app/_server/people/join-desk";

export function POST(request: Request): Promise<Response> {
  return receiveJoin(request);
}
