import { readOwnFundamentals, readOwnReadingCounts } from "@/db/read/own-fundamentals";
import { insertOwnFundamental, updateOwnFundamental } from "@/db/write/own-fundamentals";
import { orderedFundamentals } from "@/lib/domain/catalogue";
import type { EarlierDefinition, Fundamental } from "@/lib/domain/fundamental";
import { isRead } from "@/lib/domain/fundamental-on";
import { SINCE_EVER } from "@/lib/domain/goal-band";
import { ownIdFor, parseDefinitionForm } from "@/lib/ingest/parse-definition-form";
import { buildDefinition, buildDefinitions } from "@/lib/report/build-definitions";
import type { FormModel, TextPage } from "@/lib/report/form-model";
import type { HappenPage } from "@/lib/report/happen-model";
import { sayFundamental } from "@/lib/words/say-fundamental";
import { judgeSoon } from "../analysis/judge-soon";
import { linkTables } from "../archive/table-links";
import { daysHere, instantOf } from "../clock";
import { kindOf } from "../draft/draft-forms";
import { findFormDraft, keepFormDraft } from "../draft/form-draft";
import { sayFieldIssues } from "../draft/say-field-issues";
import { type Refused, submitOnce } from "../draft/submit-once";
import { withKeep } from "../draft/with-keep";
import type { Viewer } from "../gate";
import { readOwn } from "../season/student-record";
import { buildDefinitionForm } from "./definition-form";

/** The words under which the forms are kept: of a new fundamental, and of one whose definition changes. */
const NEW = "definition-form";
const CHANGE = "definition-change";

function sourceOf({ db, scope, today }: Viewer) {
  return { own: orderedFundamentals(readOwn(db, scope)).filter(isOwn), counts: readOwnReadingCounts(db, scope), today };
}

function isOwn({ ownName }: Fundamental): boolean {
  return ownName !== null;
}

function findOwn(viewer: Viewer, id: string): Fundamental | undefined {
  return sourceOf(viewer).own.find((each) => each.id === id);
}

/** Everything that the academy measures. */
export function loadDefinitions(viewer: Viewer): HappenPage {
  return linkTables(viewer.words, "definitions", {}, buildDefinitions(viewer.words, sourceOf(viewer)));
}

/** One of its own fundamentals; null: there is none of that id. */
export function loadDefinition(viewer: Viewer, id: string): HappenPage | null {
  const fundamental = findOwn(viewer, id);
  if (fundamental === undefined) return null;
  const { own: _own, ...source } = sourceOf(viewer);
  const page = buildDefinition(viewer.words, { ...source, fundamental, dayOf: daysHere(viewer.academy) });
  return linkTables(viewer.words, "definition", { fundamental: id }, page);
}

/** What leads to them from the settings. */
export function loadDefinitionsDoor(viewer: Viewer): TextPage["parts"][number] {
  const { words, today } = viewer;
  const own = sourceOf(viewer).own.filter((each) => isRead(each, today));
  return {
    margin: words.say("definitions"),
    heading: words.say("definitions.title", { own: own.length }),
    paragraphs: [words.say("definitions.lede")],
    links: [{ href: "/settings/fundamentals", label: words.say("definitions.open") }],
  };
}

/** What is said where somebody else changed the definition meanwhile: whoever reads it has seen what it became. */
function stale({ words }: Viewer): string {
  return words.say("definition-form.stale");
}

/** The form that defines a fundamental, or changes its definition; null: there is none of that id. */
export function loadDefinitionForm(
  viewer: Viewer,
  id: string | null,
  draftId: string,
  dropped?: string,
): FormModel | null {
  const { words, db, scope } = viewer;
  const { counts } = sourceOf(viewer);
  const fundamental = id === null ? null : findOwn(viewer, id);
  if (fundamental === undefined) return null;
  const form = id === null ? NEW : CHANGE;
  const draft = findFormDraft(viewer, kindOf(form, "", id ?? ""), draftId);
  const changes = fundamental?.earlier?.length ?? 0;
  const typed = Number(new Map(draft?.entries).get("seen") ?? changes);
  const model = buildDefinitionForm(words, {
    all: orderedFundamentals(readOwn(db, scope)),
    now:
      fundamental === null
        ? null
        : {
            fundamental,
            read: counts.has(fundamental.id) ? "yes" : "no",
            changes: draft?.refusal === stale(viewer) ? changes : typed,
          },
    draft,
  });
  return withKeep(viewer, model, { form, studentId: "", ...(id === null ? {} : { of: id }), draftId, dropped });
}

interface Kept {
  readonly kind: "kept";
  readonly id: string;
}

/** Defines a fundamental, once; a refused form is kept. */
export function addDefinition(viewer: Viewer, data: FormData): Kept | Refused {
  return submitOnce<Kept>(viewer, kindOf(NEW, ""), data, () => enterDefinition(viewer, null, data));
}

/** Changes a definition, once, and judges anew whoever it reaches; a refused form is kept. `unknown`: there is none of that id. */
export function changeDefinition(viewer: Viewer, id: string, data: FormData): Kept | Refused | { kind: "unknown" } {
  const fundamental = findOwn(viewer, id);
  if (fundamental === undefined) return { kind: "unknown" };
  const kind = kindOf(CHANGE, "", id);
  const outcome = submitOnce<Kept>(viewer, kind, data, () => enterDefinition(viewer, fundamental, data));
  if (outcome.kind === "kept") void judgeSoon(viewer);
  return outcome;
}

function enterDefinition(viewer: Viewer, now: Fundamental | null, data: FormData): Kept | Refused {
  const { words, db, scope, academy, today } = viewer;
  const kind = now === null ? kindOf(NEW, "") : kindOf(CHANGE, "", now.id);
  const refuse = (errors: Readonly<Record<string, string>>, refusal: string): Refused => ({
    kind: "refused",
    draftId: keepFormDraft(viewer, kind, data, errors, refusal),
  });
  const { counts } = sourceOf(viewer);
  const all = orderedFundamentals(readOwn(db, scope));
  const read = now !== null && counts.has(now.id) ? ("yes" as const) : ("no" as const);
  const parsed = parseDefinitionForm(data, {
    ...{ today, all, now: now === null ? null : { fundamental: now, read } },
    names: all.filter(({ id }) => id !== now?.id).map((each) => sayFundamental(words, each)),
  });
  if (parsed.kind === "issues") {
    const errors = sayFieldIssues(words, parsed.issues);
    return refuse(errors, words.say("definition-form.refusal", { problems: Object.keys(errors).length }));
  }
  const { becomes, why } = parsed.value;
  if (now === null) {
    const id = ownIdFor(becomes.ownName ?? "", new Set(all.map((each) => each.id)));
    insertOwnFundamental(db, scope, { id, definition: JSON.stringify({ id, ...becomes }) }, instantOf(academy));
    return { kind: "kept", id };
  }
  const earlier = now.earlier ?? [];
  if (Number(data.get("seen")) !== earlier.length) return refuse({}, stale(viewer));
  const { id, earlier: _earlier, derivedFrom: _derived, ...was } = now;
  const kept = [
    ...earlier,
    // What nothing was read by never held for any film.
    ...[{ ...was, until: read === "yes" ? today : SINCE_EVER, who: viewer.name, why, changedAt: instantOf(academy) }],
  ] as readonly EarlierDefinition[];
  const seen = readOwnFundamentals(db, scope).find((row) => row.id === id)?.definition ?? "";
  const made = updateOwnFundamental(db, scope, {
    ...{ id, definition: JSON.stringify({ id, ...becomes, earlier: kept }), seen },
  });
  if (made.kind === "stale") throw new Error(`the definition of ${id} changed within one transaction`);
  return { kind: "kept", id };
}
