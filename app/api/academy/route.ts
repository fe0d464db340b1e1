import { receiveChoice } from "@/app/_server/settings/load-switch";

export function POST(request: Request): Promise<Response> {
  return receiveChoice(request);
}
