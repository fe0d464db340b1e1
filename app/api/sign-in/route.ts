import { receiveSignIn } from "@/app/_server/access/sign-in-desk";

export function POST(request: Request): Promise<Response> {
  return receiveSignIn(request);
}
