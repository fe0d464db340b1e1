import { createHash, randomUUID } from "node:crypto";
import { inTransaction } from "@/db/client";
import { type Draft, readDraft } from "@/db/read/drafts";
import { readReceipt } from "@/db/read/receipts";
import { deleteDraft } from "@/db/write/drafts";
import { insertReceipt } from "@/db/write/receipts";
import { currentInstant } from "../clock";
import type { Viewer } from "../gate";
import { isDraftId } from "./draft-forms";
import { bodyOf, type Entries, keepFormDraft, typedEntries } from "./form-draft";
import { refuseForDisk, releaseHeld } from "./held-forms";
import { keptAt } from "./kept-at";
import { differencesOf, keepAside, mergePicks } from "./two-windows";
import type { Refused } from "./typed-entries";

export type { Refused } from "./typed-entries";

interface Kept<T> {
  readonly digest: string;
  readonly answer: T;
}

/** One text for one content, whatever the order of the fields. */
function digestOf(entries: Entries): string {
  const lines = entries.filter(([, value]) => value !== "").map(([name, value]) => JSON.stringify([name, value]));
  return createHash("sha256").update(lines.sort().join("\n")).digest("hex");
}

/** Whether a form was sent from a page that has not seen what another one kept meanwhile. */
function isStale(row: Draft, data: FormData): boolean {
  const { writer, entries } = bodyOf(row);
  if (Number(data.get("version") ?? 0) === row.version || writer === String(data.get("writer") ?? "")) return false;
  return differencesOf(entries, typedEntries(data)).length > 0;
}

function answerAgain<T>(viewer: Viewer, kind: string, data: FormData, key: string): T | Refused | null {
  const receipt = readReceipt(viewer.db, viewer.scope, key);
  if (!receipt || receipt.kind !== kind) return null;
  const { digest, answer } = JSON.parse(receipt.outcome) as Kept<T>;
  if (digest === digestOf(typedEntries(data))) return answer;
  // Changed since: neither saved over it nor lost. It goes on under an id of its own.
  data.set("draft", randomUUID());
  const at = keptAt(viewer, receipt.savedAt);
  return {
    kind: "refused",
    draftId: keepFormDraft(viewer, kind, data, {}, viewer.words.say("draft.saved-before", { at })),
  };
}

/**
 * Saves a form once, whole or not at all. The same form sent again, by a second press, by Back or by a retry, gets the
 * same answer and changes nothing; one from a page that has not seen what another window kept is refused, and both are
 * kept. A form without an id is simply worked on. Where the disk takes nothing, the form comes back as it was typed.
 *
 * @param data its fields; where somebody chose between two windows, the choices are put in
 * @param work what saves it, in the same transaction as the receipt; synchronous
 */
export function submitOnce<T extends { readonly kind: string }>(
  viewer: Viewer,
  kind: string,
  data: FormData,
  work: () => T | Refused,
): T | Refused {
  try {
    const outcome = attempt(viewer, kind, data, work);
    releaseHeld(viewer, String(data.get("draft") ?? ""));
    return outcome;
  } catch (error) {
    return refuseForDisk(viewer, kind, data, error);
  }
}

function attempt<T extends { readonly kind: string }>(
  viewer: Viewer,
  kind: string,
  data: FormData,
  work: () => T | Refused,
): T | Refused {
  const key = String(data.get("draft") ?? "");
  if (!isDraftId(key)) return work();
  return inTransaction(viewer.db, () => {
    const answered = answerAgain<T>(viewer, kind, data, key);
    if (answered) return answered;
    const row = readDraft(viewer.db, viewer.scope, key);
    if (row?.kind === kind) {
      if (isStale(row, data)) return { kind: "refused", draftId: keepAside(viewer, row, data) };
      if (mergePicks(viewer, row, data) === "open")
        return {
          kind: "refused",
          draftId: keepFormDraft(viewer, kind, data, {}, viewer.words.say("draft.choose-first")),
        };
    }
    const typed = digestOf(typedEntries(data));
    const answer = work();
    if (answer.kind === "refused") return answer;
    const outcome: Kept<T> = { digest: typed, answer: answer as T };
    insertReceipt(viewer.db, viewer.scope, { key, kind, outcome: JSON.stringify(outcome), savedAt: currentInstant() });
    deleteDraft(viewer.db, viewer.scope, key);
    return answer;
  });
}

/** Keeps a form that is sent only to be looked at; one that another window has moved past is kept beside it. */
export function keepLooked(viewer: Viewer, kind: string, data: FormData): string {
  const key = String(data.get("draft") ?? "");
  try {
    return inTransaction(viewer.db, () => {
      const row = isDraftId(key) ? readDraft(viewer.db, viewer.scope, key) : undefined;
      if (row?.kind === kind && isStale(row, data)) return keepAside(viewer, row, data);
      return keepFormDraft(viewer, kind, data, {}, "");
    });
  } catch (error) {
    return refuseForDisk(viewer, kind, data, error).draftId;
  }
}
