import { answerHealth } from "@/app/_server/door/health";

/** Whether the server answers and can read its data. */
export function GET(): Promise<Response> {
  return answerHealth();
}
