import { inTransaction } from "@/db/client";
import { type Draft, isOthersDraft, readDraft } from "@/db/read/drafts";
import { readReceipt } from "@/db/read/receipts";
import { insertDraft, updateDraftBody } from "@/db/write/drafts";
import type { KeepAnswer } from "@/lib/report/keep-answer";
import { currentInstant } from "../clock";
import type { Viewer } from "../gate";
import { DRAFT_FORMS, kindOf, undroppedKind } from "./draft-forms";
import { bodyOf, type Entries, type FormDraft } from "./form-draft";
import { releaseHeld } from "./held-forms";
import { keptAt } from "./kept-at";
import { differencesOf, withAside } from "./two-windows";

/** A form as it stands in one window. */
export interface KeepRequest {
  readonly draft: string;
  readonly form: string;
  readonly studentId: string;
  /** The session, draw or other thing that it is for; absent or empty: none. */
  readonly of?: string;
  /** The version that the window has seen; 0: none was kept. */
  readonly version: number;
  /** The window, and its how-manieth keep: a late one never replaces a newer one. */
  readonly writer: string;
  readonly turn: number;
  readonly entries: Entries;
  /** The fields that changed since the window's last keep, where the entries are theirs alone; absent: all are there. */
  readonly changed?: readonly string[];
  /** The other window about which somebody has chosen; empty: about none. */
  readonly settles: string;
}

/** What came of keeping; `absent`: there is no such form for the viewer. */
export type KeepOutcome = Extract<KeepAnswer, { kind: "kept" | "changed" | "saved" }> | { readonly kind: "absent" };

function kept(viewer: Viewer, row: Pick<Draft, "version" | "updatedAt">): KeepOutcome {
  const at = keptAt(viewer, row.updatedAt);
  return { kind: "kept", version: row.version, said: viewer.words.say("draft.kept", { at }) };
}

function savedBefore(viewer: Viewer, draftId: string): Extract<KeepAnswer, { kind: "saved" }> | null {
  const receipt = readReceipt(viewer.db, viewer.scope, draftId);
  if (!receipt) return null;
  const at = keptAt(viewer, receipt.savedAt);
  return { kind: "saved", said: viewer.words.say("draft.saved-elsewhere", { at }) };
}

/** What was wrong stays said only of fields that still hold what was wrong. */
function stillWrong(before: FormDraft | null, entries: Entries): Pick<FormDraft, "errors" | "refusal"> {
  if (before === null) return { errors: {}, refusal: "" };
  const changed = new Set(differencesOf(before.entries, entries).map(({ name }) => name));
  const errors = Object.fromEntries(Object.entries(before.errors).filter(([name]) => !changed.has(name)));
  const mended = Object.keys(errors).length === 0 && Object.keys(before.errors).length > 0;
  return { errors, refusal: mended ? "" : before.refusal };
}

/**
 * A window that goes sends what changed since its last keep, for a browser sends little on then: put into what that window
 * kept last, or, where another one has replaced it, into what stands.
 */
function wholeOf(row: Draft, { writer, entries, changed }: KeepRequest): Entries {
  if (changed === undefined) return entries;
  const { writer: last, entries: standing, aside } = bodyOf(row);
  const own = last === writer ? standing : aside?.find((each) => each.writer === writer)?.entries;
  const names = new Set(changed);
  return [...(own ?? standing).filter(([name]) => !names.has(name)), ...entries];
}

function write(viewer: Viewer, kind: string, request: KeepRequest, row: Draft | undefined): KeepOutcome {
  const before = row ? bodyOf(row) : null;
  const { entries, writer, turn, settles, draft: id } = request;
  const body: FormDraft = {
    entries,
    ...stillWrong(before, entries),
    writer,
    turn,
    aside: before?.aside?.filter((each) => each.writer !== settles),
  };
  const updatedAt = currentInstant();
  const { studentId } = request;
  insertDraft(viewer.db, viewer.scope, {
    id,
    kind,
    studentId: studentId || null,
    body: JSON.stringify(body),
    updatedAt,
  });
  releaseHeld(viewer, id);
  return kept(viewer, { version: (row?.version ?? 0) + 1, updatedAt });
}

function keepBeside(viewer: Viewer, row: Draft, request: KeepRequest): KeepOutcome {
  const body = bodyOf(row);
  const { writer, entries } = request;
  const aside = withAside(body, { writer, at: currentInstant(), entries });
  updateDraftBody(viewer.db, viewer.scope, row.id, JSON.stringify({ ...body, aside } satisfies FormDraft));
  return {
    kind: "changed",
    version: row.version,
    said: viewer.words.say("draft.changed-elsewhere", { at: keptAt(viewer, row.updatedAt) }),
    settles: writer,
    differences: differencesOf(entries, body.entries),
  };
}

/**
 * Keeps a form as it stands, under its id. A window that has not seen what another one kept last replaces nothing: it is
 * told both. Whoever chose between two says which window the choice is about.
 *
 * @param sent checked by whoever calls: the form is known, and its student is the viewer's
 */
export function keepDraft(viewer: Viewer, sent: KeepRequest): KeepOutcome {
  if (!Object.hasOwn(DRAFT_FORMS, sent.form)) return { kind: "absent" };
  const kind = kindOf(sent.form, sent.studentId, sent.of);
  return inTransaction(viewer.db, () => {
    const saved = savedBefore(viewer, sent.draft);
    if (saved) return saved;
    const row = readDraft(viewer.db, viewer.scope, sent.draft);
    // What changed since a keep that isn't there any more rests on nothing.
    if (!row)
      // It may have gone to another coach with its student while this window was open.
      return sent.changed || isOthersDraft(viewer.db, viewer.scope, sent.draft)
        ? { kind: "absent" }
        : write(viewer, kind, sent, undefined);
    if (undroppedKind(row.kind) !== kind) return { kind: "absent" };
    const request = { ...sent, entries: wholeOf(row, sent) };
    const before = bodyOf(row);
    const same = differencesOf(before.entries, request.entries).length === 0;
    if (before.writer === request.writer && request.turn <= (before.turn ?? 0) && !request.settles)
      return kept(viewer, row);
    if (row.version === request.version || before.writer === request.writer) return write(viewer, kind, request, row);
    if (same && !request.settles) return kept(viewer, row);
    return keepBeside(viewer, row, request);
  });
}

/** Whether a window has seen the newest content of its form, or that it was saved: asked once when it is opened. */
export function lookAtDraft(
  viewer: Viewer,
  draftId: string,
  version: number,
): Extract<KeepAnswer, { kind: "newest" | "behind" | "saved" }> {
  const saved = savedBefore(viewer, draftId);
  if (saved) return saved;
  const row = readDraft(viewer.db, viewer.scope, draftId);
  return { kind: row === undefined || row.version <= version ? "newest" : "behind" };
}
