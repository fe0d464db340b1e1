import { randomUUID } from "node:crypto";
import { type Draft, isOthersDraft, readDraft } from "@/db/read/drafts";
import { insertDraft } from "@/db/write/drafts";
import { currentInstant } from "../clock";
import type { Viewer } from "../gate";
import { isDraftId, studentOfKind } from "./draft-forms";
import { findHeld } from "./held-forms";
import { type FormDraft, typedEntries } from "./typed-entries";

export { type AsideEntries, type Entries, type FormDraft, LEADING, typedEntries } from "./typed-entries";

/** Whether a form came back when it was sent, and not only was kept: only then it asks to confirm. */
export function cameBack(draft: FormDraft | null): "yes" | "no" {
  return draft !== null && (draft.refusal !== "" || Object.keys(draft.errors).length > 0) ? "yes" : "no";
}

export function bodyOf(row: Draft): FormDraft {
  return JSON.parse(row.body) as FormDraft;
}

/**
 * Keeps a refused form, so that nothing typed is lost; a form keeps its id.
 *
 * @param studentId whose record it is about, where its kind doesn't say
 */
export function keepFormDraft(
  viewer: Viewer,
  kind: string,
  data: FormData,
  errors: Readonly<Record<string, string>>,
  refusal: string,
  studentId: string | null = studentOfKind(kind),
): string {
  const wished = String(data.get("draft") ?? "");
  const row = isDraftId(wished) ? readDraft(viewer.db, viewer.scope, wished) : undefined;
  // A form that nobody has kept yet bears its id already; another form's id is not taken.
  const isFree = row === undefined ? !isOthersDraft(viewer.db, viewer.scope, wished) : row.kind === kind;
  const id = isDraftId(wished) && isFree ? wished : randomUUID();
  const before = row?.kind === kind ? bodyOf(row) : null;
  const writer = String(data.get("writer") ?? "");
  const turn = Number(data.get("turn") ?? 0) || 0;
  const body: FormDraft = {
    entries: typedEntries(data),
    errors,
    refusal,
    writer,
    // A keep that is still on its way stays late, whichever of the two arrives first.
    turn: before?.writer === writer ? Math.max(turn, before.turn ?? 0) : turn,
    aside: before?.aside,
  };
  insertDraft(viewer.db, viewer.scope, {
    id,
    kind,
    studentId,
    body: JSON.stringify(body),
    updatedAt: currentInstant(),
  });
  return id;
}

/** A kept form of that kind; null: there is none. */
export function findFormDraft(viewer: Viewer, kind: string, id: string | undefined): FormDraft | null {
  if (id === undefined || id === "") return null;
  const held = findHeld(viewer, kind, id);
  if (held !== null) return held;
  const row = readDraft(viewer.db, viewer.scope, id);
  return row && row.kind === kind ? bodyOf(row) : null;
}
