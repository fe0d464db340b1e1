import { randomUUID } from "node:crypto";
import { type Drill, readDrillCounts, readDrills } from "@/db/read/drills";
import { insertDrill, updateDrill } from "@/db/write/drills";
import { type DrillDescription, isOffered, parseEarlierDrills } from "@/lib/domain/drill-version";
import { parseLibraryForm } from "@/lib/ingest/parse-library-form";
import { buildLibrary, buildLibraryDrill, type LibraryEntry } from "@/lib/report/build-library";
import type { FormModel, TextPage } from "@/lib/report/form-model";
import type { HappenPage } from "@/lib/report/happen-model";
import { mayPass } from "../access/matrix";
import { linkTables } from "../archive/table-links";
import { instantOf } from "../clock";
import { kindOf } from "../draft/draft-forms";
import { findFormDraft, keepFormDraft } from "../draft/form-draft";
import { sayFieldIssues } from "../draft/say-field-issues";
import { type Refused, submitOnce } from "../draft/submit-once";
import { withKeep } from "../draft/with-keep";
import { runningTests } from "../fair/fair-source";
import type { Viewer } from "../gate";
import { loadAcademyRules } from "../season/student-record";
import { buildLibraryForm } from "./library-form";

/** The words under which the forms are kept: of a new drill, and of one that is described anew. */
const NEW = "library-form";
const CHANGE = "library-change";

function entryOf({ earlier, ...drill }: Drill, counts: ReadonlyMap<string, number>): LibraryEntry {
  return { ...drill, before: parseEarlierDrills(earlier), given: counts.get(drill.id) ?? 0 };
}

function libraryOf({ db, scope }: Viewer): readonly LibraryEntry[] {
  const counts = readDrillCounts(db, scope);
  return readDrills(db, scope).map((drill) => entryOf(drill, counts));
}

function sourceOf(viewer: Viewer) {
  const { db, scope, academy, today, roles } = viewer;
  return {
    fundamentals: loadAcademyRules(db, scope, academy).fundamentals,
    today,
    changes: mayPass("/drills/[drillId]/change", roles) ? ("yes" as const) : ("no" as const),
  };
}

/** The academy's drills. */
export function loadLibrary(viewer: Viewer): HappenPage {
  const page = buildLibrary(viewer.words, { ...sourceOf(viewer), drills: libraryOf(viewer) });
  return linkTables(viewer.words, "library", {}, page);
}

/** What leads to them from the settings. */
export function loadLibraryDoor(viewer: Viewer): TextPage["parts"][number] {
  const { words, today } = viewer;
  const offered = libraryOf(viewer).filter((drill) => isOffered(drill, today)).length;
  return {
    margin: words.say("library"),
    heading: words.say("library.title", { offered }),
    paragraphs: [words.say("library.lede")],
    links: [{ href: "/drills/library", label: words.say("library.open-all") }],
  };
}

/** One of them, with everything that it was before; null: there is none of that id. */
export function loadLibraryDrill(viewer: Viewer, drillId: string): HappenPage | null {
  const drill = libraryOf(viewer).find(({ id }) => id === drillId);
  if (drill === undefined) return null;
  const page = buildLibraryDrill(viewer.words, { ...sourceOf(viewer), drill });
  return linkTables(viewer.words, "library-drill", { drill: drillId }, page);
}

/** The form that adds a drill, or describes one anew; null: there is none of that id. */
export function loadLibraryForm(
  viewer: Viewer,
  drillId: string | null,
  draftId: string,
  dropped?: string,
): FormModel | null {
  const { words } = viewer;
  const of = drillId ?? undefined;
  const form = drillId === null ? NEW : CHANGE;
  const found = drillId === null ? null : libraryOf(viewer).find(({ id }) => id === drillId);
  if (found === undefined) return null;
  const draft = findFormDraft(viewer, kindOf(form, "", of), draftId);
  const seen = Number(new Map(draft?.entries).get("seen") ?? found?.before.length ?? 0);
  const model = buildLibraryForm(words, {
    fundamentals: sourceOf(viewer).fundamentals,
    drill: found === null ? null : { ...found, changes: draft?.refusal === stale(viewer) ? found.before.length : seen },
    draft,
  });
  return withKeep(viewer, model, { form, studentId: "", ...(of === undefined ? {} : { of }), draftId, dropped });
}

/** What is said where somebody else changed the drill meanwhile: whoever reads it has seen what it became. */
function stale({ words }: Viewer): string {
  return words.say("library-form.stale");
}

interface Kept {
  readonly kind: "kept";
  readonly drillId: string;
}

/** Adds a drill to the library, once; a refused form is kept. */
export function addDrill(viewer: Viewer, data: FormData): Kept | Refused {
  return submitOnce<Kept>(viewer, kindOf(NEW, ""), data, () => enterDrill(viewer, null, data));
}

/** Describes a drill anew, once; a refused form is kept. `unknown`: there is none of that id. */
export function changeDrill(viewer: Viewer, drillId: string, data: FormData): Kept | Refused | { kind: "unknown" } {
  const drill = libraryOf(viewer).find(({ id }) => id === drillId);
  if (drill === undefined) return { kind: "unknown" };
  return submitOnce<Kept>(viewer, kindOf(CHANGE, "", drillId), data, () => enterDrill(viewer, drill, data));
}

/** Whether a test by the lot that still runs gives the drill. */
function isDrawn(viewer: Viewer, drillId: string): boolean {
  return runningTests(viewer).some(({ firstDrillId, secondDrillId }) =>
    [firstDrillId, secondDrillId].includes(drillId),
  );
}

function enterDrill(viewer: Viewer, now: LibraryEntry | null, data: FormData): Kept | Refused {
  const { words, db, scope, academy, today, name: who } = viewer;
  const kind = now === null ? kindOf(NEW, "") : kindOf(CHANGE, "", now.id);
  const refuse = (errors: Readonly<Record<string, string>>, refusal: string): Refused => ({
    kind: "refused",
    draftId: keepFormDraft(viewer, kind, data, errors, refusal),
  });
  const parsed = parseLibraryForm(data, {
    today,
    others: readDrills(db, scope).filter(({ id }) => id !== now?.id),
    fundamentals: sourceOf(viewer).fundamentals.map(({ id }) => id),
    now: now === null ? null : { ...now, given: now.given > 0 ? "yes" : "no" },
  });
  const problems = (errors: Readonly<Record<string, string>>): Refused =>
    refuse(errors, words.say("library-form.refusal", { problems: Object.keys(errors).length }));
  if (parsed.kind === "issues") return problems(sayFieldIssues(words, parsed.issues));
  const { becomes, why } = parsed.value;
  if (now === null) {
    const drillId = randomUUID();
    const { retiredOn: _offered, ...added } = becomes satisfies DrillDescription;
    insertDrill(db, scope, { ...added, id: drillId });
    return { kind: "kept", drillId };
  }
  if (becomes.retiredOn !== null && now.retiredOn === null && isDrawn(viewer, now.id))
    return problems({ offered: words.say("form.issue.library-in-lot") });
  const by = { who, why, now: instantOf(academy), today };
  const made = updateDrill(db, scope, { drillId: now.id, becomes, seen: Number(data.get("seen")), by });
  if (made.kind === "stale") return refuse({}, stale(viewer));
  if (made.kind !== "updated") throw new Error(`a drill can't be changed: ${made.kind}`);
  return { kind: "kept", drillId: now.id };
}
