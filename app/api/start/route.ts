import { receiveStart } from "@/app/_server/access/start-desk";

export function POST(request: Request): Promise<Response> {
  return receiveStart(request);
}
