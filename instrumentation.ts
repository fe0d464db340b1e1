/** Runs once, before the first request is taken. */
export async function register(): Promise<void> {
  if (process.env.NEXT_RUNTIME !== "nodejs") return;
  (await import("@/app/_server/door/quiet-failures")).quietFailures();
  (await import("@/app/_server/door/seal-answers")).sealAnswers();
  await (await import("@/app/_server/door/open-or-leave")).openOrLeave();
}

/** What fails while a page is made is written down by the framework under a number; the line of the refusal names it. */
export async function onRequestError(error: unknown): Promise<void> {
  if (process.env.NEXT_RUNTIME !== "nodejs") return;
  const digest = String((error as { readonly digest?: unknown } | null)?.digest ?? "").replace(/\D/g, "");
  (await import("@/app/_server/door/answering")).noteWhy(`failed-${digest}`);
}
