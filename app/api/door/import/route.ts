import { receiveAtDoor, refuseMethod } from "@/app/_server/import/import-door";

export function GET(): Response {
  return refuseMethod();
}

export function POST(request: Request): Promise<Response> {
  return receiveAtDoor(request);
}
