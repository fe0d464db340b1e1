import { inTransaction } from "@/db/client";
import { type Draft, readDraft, readDraftsOf } from "@/db/read/drafts";
import { readSessionStudent } from "@/db/read/sessions";
import { readMergedInto, readStudent } from "@/db/read/students";
import { deleteDraft, insertDraft } from "@/db/write/drafts";
import { isCalendarDay } from "@/lib/domain/calendar-day";
import type { UnfinishedModel, UnfinishedPartModel } from "@/lib/report/keep-model";
import { sayDay } from "@/lib/words/day-words";
import { admitToStudent, type Viewer } from "../gate";
import { trySettlingDrafts } from "../people/settle-drafts";
import { DRAFT_FORMS, droppedKind, formOfKind, isDropped, type KindRead, undroppedKind } from "./draft-forms";
import { bodyOf } from "./form-draft";
import { keptAt } from "./kept-at";

/** Dropped forms that can be taken back; the oldest goes when one more is dropped, and never by a clock. */
const DROPPED_KEPT = 20;

/** The student whom one turned out to be, or the very one. */
function presentStudent(viewer: Viewer, studentId: string): string {
  const scope = admitToStudent(viewer, studentId);
  const merged = scope && readMergedInto(viewer.db, scope);
  return merged ? presentStudent(viewer, merged) : studentId;
}

/** Whose a kept form is now: its session may have gone to another student since. Empty: about nobody. */
function studentOf(viewer: Viewer, { spec, studentId, of }: KindRead, row: Draft): string {
  if (spec.about === "nobody") return "";
  if (spec.of === "session") return readSessionStudent(viewer.db, viewer.scope, of) ?? "";
  return spec.of === undefined ? studentId : presentStudent(viewer, row.studentId ?? "");
}

/** Where a kept form is filled in, and whose it is; null: no form that is kept while typing, or nobody's any more. */
function placeOf(viewer: Viewer, row: Draft) {
  const kind = formOfKind(row.kind);
  if (!kind) return null;
  const studentId = studentOf(viewer, kind, row);
  const about = kind.spec.about === "student" ? admitToStudent(viewer, studentId) : null;
  if (kind.spec.about === "student" && !about) return null;
  return { form: kind.form, about, page: kind.spec.page(studentId, kind.of) };
}

/** A kept form in words: whose, of which day, how much of it. */
export function describeDraft(viewer: Viewer, row: Draft): UnfinishedModel | null {
  const found = placeOf(viewer, row);
  if (!found) return null;
  const { words } = viewer;
  const { form, about, page } = found;
  const { entries } = bodyOf(row);
  const day = entries.find(([name, value]) => name === "day" && isCalendarDay(value))?.[1];
  const cells = entries.filter(([name, value]) => /^[rv]\./.test(name) && value !== "").length;
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
    goOn: { href: `${page}?draft=${row.id}`, label: words.say("draft.go-on") },
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
  trySettlingDrafts(viewer);
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
    const found = row ? placeOf(viewer, row) : null;
    if (!row || !found) return null;
    const wanted = to === "dropped" ? droppedKind(row.kind) : undroppedKind(row.kind);
    if (isDropped(row.kind) !== isDropped(wanted)) rewriteKind(viewer, row, wanted);
    const others = readDraftsOf(viewer.db, viewer.scope, droppedKind("")).filter((each) => each.id !== id);
    for (const old of others.slice(DROPPED_KEPT - 1)) deleteDraft(viewer.db, viewer.scope, old.id);
    return found.page;
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
