import { inTransaction } from "@/db/client";
import { type Draft, readDraft, readDraftsOf } from "@/db/read/drafts";
import { readStudent } from "@/db/read/students";
import { deleteDraft, insertDraft } from "@/db/write/drafts";
import { isCalendarDay } from "@/lib/domain/calendar-day";
import type { UnfinishedModel, UnfinishedPartModel } from "@/lib/report/keep-model";
import { sayDay } from "@/lib/words/day-words";
import { admitToStudent, type Viewer } from "../gate";
import { DRAFT_FORMS, droppedKind, formOfKind, isDropped, undroppedKind } from "./draft-forms";
import { bodyOf } from "./form-draft";
import { keptAt } from "./kept-at";

/** Dropped forms that can be taken back; the oldest goes when one more is dropped, and never by a clock. */
const DROPPED_KEPT = 20;

/** A kept form in words: whose, of which day, how much of it. */
export function describeDraft(viewer: Viewer, row: Draft): UnfinishedModel | null {
  const found = formOfKind(row.kind);
  if (!found) return null;
  const { words } = viewer;
  const { form, studentId } = found;
  const about = DRAFT_FORMS[form]?.about === "student" ? admitToStudent(viewer, studentId) : null;
  if (DRAFT_FORMS[form]?.about === "student" && !about) return null;
  const { entries } = bodyOf(row);
  const day = entries.find(([name, value]) => name === "day" && isCalendarDay(value))?.[1];
  const cells = entries.filter(([name, value]) => name.startsWith("r.") && value !== "").length;
  const label = words.say(`draft.of.${form}`, {
    alias: about ? readStudent(viewer.db, about).alias : "",
    day: day === undefined ? "" : sayDay(words, day, "short"),
    hasDay: day === undefined ? "no" : "yes",
    values: cells,
    at: keptAt(viewer, row.updatedAt),
  });
  return {
    id: row.id,
    label,
    goOn: { href: `${DRAFT_FORMS[form]?.page(studentId)}?draft=${row.id}`, label: words.say("draft.go-on") },
    drop: {
      ask: words.say("draft.drop"),
      explains: words.say("draft.drop.explains"),
      submit: words.say("draft.drop.submit"),
    },
  };
}

function described(viewer: Viewer, rows: readonly Draft[]): readonly UnfinishedModel[] {
  return rows.flatMap((row) => describeDraft(viewer, row) ?? []);
}

/** Every unfinished form of the academy, or those of one kind, the latest first. */
export function loadUnfinished(viewer: Viewer, kind: string | null = null): readonly UnfinishedModel[] {
  const rows = Object.keys(DRAFT_FORMS).flatMap((form) => readDraftsOf(viewer.db, viewer.scope, form));
  const wanted = rows.filter((row) => kind === null || row.kind === kind);
  return described(
    viewer,
    wanted.sort((a, b) => b.updatedAt.localeCompare(a.updatedAt)),
  );
}

/** Those that were dropped and can be taken back, the latest first. */
export function loadDropped(viewer: Viewer): readonly UnfinishedModel[] {
  return described(viewer, readDraftsOf(viewer.db, viewer.scope, droppedKind("")));
}

/** The form that was just dropped; null: none of that kind bears the id. */
export function findDropped(viewer: Viewer, id: string | undefined, kind: string): UnfinishedModel | null {
  const row = id === undefined ? undefined : readDraft(viewer.db, viewer.scope, id);
  return row && row.kind === droppedKind(kind) ? describeDraft(viewer, row) : null;
}

function rewriteKind(viewer: Viewer, row: Draft, kind: string): void {
  const { id, studentId, body, updatedAt } = row;
  insertDraft(viewer.db, viewer.scope, { id, kind, studentId, body, updatedAt });
}

/** Takes a form off the lists, or puts it back on them; nothing of it is lost meanwhile. Returns where it is filled in. */
export function moveDraft(viewer: Viewer, id: string, to: "dropped" | "unfinished"): string | null {
  return inTransaction(viewer.db, () => {
    const row = readDraft(viewer.db, viewer.scope, id);
    const found = row ? formOfKind(row.kind) : null;
    if (!row || !found) return null;
    const wanted = to === "dropped" ? droppedKind(row.kind) : undroppedKind(row.kind);
    if (isDropped(row.kind) !== isDropped(wanted)) rewriteKind(viewer, row, wanted);
    const others = readDraftsOf(viewer.db, viewer.scope, droppedKind("")).filter((each) => each.id !== id);
    for (const old of others.slice(DROPPED_KEPT - 1)) deleteDraft(viewer.db, viewer.scope, old.id);
    return DRAFT_FORMS[found.form]?.page(found.studentId) ?? null;
  });
}

/** All that lies unfinished, and what was dropped lately, for the page on which a session is begun. */
export function loadUnfinishedPart(viewer: Viewer): UnfinishedPartModel {
  const { words } = viewer;
  const items = loadUnfinished(viewer);
  return {
    margin: words.say("draft.list.margin"),
    heading: words.say("draft.list.heading", { count: items.length }),
    items,
    dropped: loadDropped(viewer),
    droppedHeading: words.say("draft.list.dropped"),
    takeBack: words.say("draft.take-back"),
    back: "/record",
  };
}
