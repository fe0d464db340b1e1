import type { KeepAnswer } from "@/lib/report/keep-answer";
import type { KeepModel } from "@/lib/report/keep-model";
import type { Entries } from "./browser-store";

/** What came of sending; `unreachable`: the server says nothing. A refused form is sent again later, or not at all. */
export type Sent =
  | Exclude<KeepAnswer, { kind: "refused" }>
  | (Extract<KeepAnswer, { kind: "refused" }> & { readonly again: "later" | "no" })
  | { readonly kind: "unreachable" };

/** One keep of a window. */
export interface Sending {
  readonly version: number;
  /** The window, and its how-manieth keep. */
  readonly writer: string;
  readonly turn: number;
  readonly entries: Entries;
  /** The fields that changed since the last keep, where the entries are theirs alone; absent: all are there. */
  readonly changed?: readonly string[];
  /** The other window about which was chosen; empty: none. */
  readonly settles: string;
  readonly act: "keep" | "look";
}

const DOOR = "/api/drafts";

/** The status of too many requests at once: it passes, as what is wrong on the server's side does. */
const SLOW_DOWN = 429;

/** A server that is silent for so long, in milliseconds, is taken for one that can't be reached. */
const PATIENCE = 10_000;

/** Most characters that a browser sends on while a page goes. */
const GOING_LIMIT = 60_000;

function textOf(keep: KeepModel, sending: Sending): string {
  const { draft, form, studentId, of } = keep;
  return JSON.stringify({ draft, form, studentId, of, ...sending });
}

export async function sendDraft(keep: KeepModel, sending: Sending): Promise<Sent> {
  const body = textOf(keep, sending);
  try {
    const answer = await fetch(DOOR, {
      method: "POST",
      headers: { "content-type": "application/json" },
      body,
      keepalive: new Blob([body]).size < GOING_LIMIT,
      signal: AbortSignal.timeout(PATIENCE),
    });
    const read = (await answer.json()) as KeepAnswer;
    if (read.kind !== "refused") return read;
    return { ...read, again: answer.status > 500 || answer.status === SLOW_DOWN ? "later" : "no" };
  } catch {
    return { kind: "unreachable" };
  }
}

/** The same while the page goes: nobody hears the answer. `too-much`: more than a browser sends on then; nothing went. */
export function sendOnGoing(keep: KeepModel, sending: Sending): "sent" | "too-much" {
  const isTaken = navigator.sendBeacon(DOOR, new Blob([textOf(keep, sending)], { type: "application/json" }));
  return isTaken ? "sent" : "too-much";
}
