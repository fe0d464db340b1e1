/** What came of sending; `away`: nobody answers, or the server can't save just now. `dead`: the link opens nothing any more. */
export type Told =
  | { readonly kind: "told"; readonly outcome: string; readonly why: string; readonly to: string }
  | { readonly kind: "away" }
  | { readonly kind: "dead" };

/** A server that is silent for so long, in milliseconds, is taken for one that can't be reached. */
const PATIENCE = 8000;

/** Sends fields as a form without scripts would, and reads what came of it. */
export async function sendPractice(action: string, fields: URLSearchParams): Promise<Told> {
  try {
    const answer = await fetch(action, {
      ...{ method: "POST", headers: { accept: "application/json" }, body: fields },
      signal: AbortSignal.timeout(PATIENCE),
    });
    if (answer.status === 404) return { kind: "dead" };
    if (!answer.ok) return { kind: "away" };
    const { outcome, why, to } = (await answer.json()) as Record<"outcome" | "why" | "to", string>;
    return { kind: "told", outcome, why, to };
  } catch {
    return { kind: "away" };
  }
}
