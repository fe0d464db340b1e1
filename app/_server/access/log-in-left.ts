import type { LogInLeft } from "@/lib/report/basic-model";
import { readClock } from "../clock";
import { requireLogIn } from "../gate";
import type { LogIn } from "./log-in";

/** Seconds that a log-in has left. A browser’s clock may be wrong, so that it is told how long, and not when. */
export function secondsLeft({ unused, latest }: LogIn["ends"]): LogInLeft {
  const now = readClock().getTime();
  const until = (end: number) => Math.max(0, Math.floor((end - now) / 1000));
  return { unused: until(unused), latest: until(latest) };
}

/** Tells a page how long its log-in has left. Asked by GET it is no use of it; by POST it is, and begins the hours anew. */
export async function tellLogInLeft(row: "GET /api/log-in" | "POST /api/log-in"): Promise<Response> {
  const { logIn } = await requireLogIn(row);
  return Response.json(secondsLeft(logIn.ends));
}
