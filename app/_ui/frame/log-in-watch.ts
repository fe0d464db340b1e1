/** So long before the end it is said, in seconds; WCAG 2.2.1 asks for twenty at least. */
export const WARN = 15 * 60;
/** So often it is asked again once it was said, in milliseconds: a form that is kept, or another window, lets the log-in go on. */
export const ASK_AGAIN_MS = 60_000;

/** What a window knows of its log-in; instants in milliseconds. */
export interface LogInWatch {
  readonly end: number;
  /** Whether it has been said that the end is near, that it is over, or nothing. */
  readonly told: "nothing" | "near" | "over";
  readonly askedAt: number;
}

/** Whether the server is asked how long the log-in has left: `returned` when somebody comes back to the window. */
export function isTimeToAsk({ end, told, askedAt }: LogInWatch, now: number, why: "clock" | "returned"): boolean {
  // Once it is over, it is asked again only when somebody comes back to this window, from signing in say.
  if (told === "over") return why === "returned";
  if (end - now > WARN * 1000) return false;
  return told === "nothing" || why === "returned" || end <= now || now - askedAt >= ASK_AGAIN_MS;
}
