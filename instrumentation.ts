/** Runs once, before the first request is taken. */
export async function register(): Promise<void> {
  if (process.env.NEXT_RUNTIME !== "nodejs") return;
  (await import("@/app/_server/door/seal-answers")).sealAnswers();
  await (await import("@/app/_server/door/open-or-leave")).openOrLeave();
}
