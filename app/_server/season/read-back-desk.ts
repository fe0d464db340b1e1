import { randomUUID } from "node:crypto";
import { readReadBackCandidates, readReadBackItems, readReadBacks } from "@/db/read/read-backs";
import {
  insertReadBack,
  type ReadBackEnd,
  type ReadBackValue,
  updateReadBackDropped,
  updateReadBackFinished,
  updateReadBackTyped,
} from "@/db/write/read-backs";
import type { Fundamental } from "@/lib/domain/fundamental";
import type { ReadBack, ReadBackCandidate } from "@/lib/domain/read-back";
import { changedFields, emptiedPlaces, parseReadBackForm } from "@/lib/ingest/parse-read-back-form";
import { parseRereadForm } from "@/lib/ingest/parse-reread-form";
import { drawReadBack, isReadable } from "@/lib/verdict/draw-read-back";
import { chance } from "../chance";
import { instantOf } from "../clock";
import { whyNotRecorded } from "../consent/consent-gate";
import { kindOf } from "../draft/draft-forms";
import { keepFormDraft } from "../draft/form-draft";
import { sayFieldIssues } from "../draft/say-field-issues";
import { type Refused, submitOnce } from "../draft/submit-once";
import type { StudentViewer } from "../gate";
import { loadRules } from "../roster/load-verdicts";
import { loadAcademyRules } from "./student-record";

/** The forms of read-backs among those that are kept: the one that chooses films, and the one that reads them. */
export const READ_BACK_FORM = "read-back-form";
export const READ_BACK_VALUES = "read-back-values";

/** The kinds under which they are kept. */
export function readBackDraft(studentId: string): string {
  return kindOf(READ_BACK_FORM, studentId);
}
export function readBackValuesDraft(readBackId: string): string {
  return kindOf(READ_BACK_VALUES, "", readBackId);
}

/** Fundamentals that are read from films; what follows from two others is read with them. */
export function readFromFilms(viewer: StudentViewer): readonly Fundamental[] {
  return loadAcademyRules(viewer.db, viewer.scope, viewer.academy).fundamentals.filter(
    (fundamental) => fundamental.derivedFrom === null,
  );
}

/** A read-back of the student; null: there is none of that name. */
export function findReadBack(viewer: StudentViewer, readBackId: string): ReadBack | null {
  return readReadBacks(viewer.db, viewer.student).find((each) => each.id === readBackId) ?? null;
}

/** An earlier film with its swings that wait to be read. */
export interface EarlierFilm {
  readonly sessionId: string;
  readonly day: string;
  readonly reader: string;
  readonly swings: number;
}

/** Films that can be read back, oldest first. */
export function earlierFilms(candidates: readonly ReadBackCandidate[]): readonly EarlierFilm[] {
  const films = new Map<string, EarlierFilm>();
  for (const { sessionId, day, reader } of candidates.filter(isReadable))
    films.set(sessionId, { sessionId, day, reader, swings: (films.get(sessionId)?.swings ?? 0) + 1 });
  return [...films.values()];
}

/** Draws the chosen films' swings in random order; a refused form is kept. */
export function startReadBack(viewer: StudentViewer, data: FormData): Started | Refused {
  return submitOnce<Started>(viewer, readBackDraft(viewer.student.studentId), data, () => enterWish(viewer, data));
}

type Started = { readonly kind: "started"; readonly readBackId: string } | { readonly kind: "not-there" };

function enterWish(viewer: StudentViewer, data: FormData): Started | Refused {
  const { words, db, student } = viewer;
  const fundamental = readFromFilms(viewer).find((each) => each.id === data.get("fundamental"));
  if (!fundamental) return { kind: "not-there" };
  const refuse = (errors: Readonly<Record<string, string>>, refusal: string): Refused => ({
    kind: "refused",
    draftId: keepFormDraft(viewer, readBackDraft(student.studentId), data, errors, refusal),
  });
  const why = whyNotRecorded(viewer, student);
  if (why !== null) return refuse({}, why);
  const { id: fundamentalId, view } = fundamental;
  const reader = String(data.get("reader") ?? "");
  const candidates = readReadBackCandidates(db, student, { fundamentalId, view }).filter(
    (each) => each.reader === reader,
  );
  const parsed = parseReadBackForm(data, earlierFilms(candidates));
  if (parsed.kind === "issues") {
    const errors = sayFieldIssues(words, parsed.issues);
    return refuse(errors, words.say("read-back.refusal", { problems: Object.keys(errors).length }));
  }
  const items = drawReadBack(candidates, parsed.value, chance);
  const readBackId = randomUUID();
  const by = { who: viewer.name, drawnAt: instantOf(viewer.academy) };
  insertReadBack(db, student, { id: readBackId, fundamentalId, reader, items: items.map(bare), ...by });
  return { kind: "started", readBackId };
}

function bare({ swingId, filmReference }: { readonly swingId: number; readonly filmReference: string }) {
  return { swingId, filmReference };
}

/** Every value typed so far, read again as it was confirmed when it was typed. */
function valuesOf(viewer: StudentViewer, readBackId: string, fundamental: Fundamental): readonly ReadBackValue[] {
  const items = readReadBackItems(viewer.db, viewer.student, readBackId);
  const typed = new FormData();
  typed.set("confirmUnusual", "yes");
  for (const item of items) if (item.typed !== null) typed.set(`v.${item.place}`, item.typed);
  return parseRereadForm(
    typed,
    items.map(({ place }) => ({ place, fundamental })),
  ).values;
}

/** What an open read-back asks for; null: it is over, or there is none of that name. */
function findOpen(viewer: StudentViewer, readBackId: string) {
  const found = findReadBack(viewer, readBackId);
  const fundamental = readFromFilms(viewer).find((each) => each.id === found?.fundamentalId);
  if (found === null || found.finishedAt !== null || found.droppedAt !== null || !fundamental) return null;
  const places = readReadBackItems(viewer.db, viewer.student, readBackId).map(({ place }) => place);
  return { fundamental, places };
}

type ReadBackSaved = { readonly kind: "saved" } | Exclude<ReadBackEnd, { readonly kind: "empty" }>;

/**
 * Puts what was typed into an open read-back, bad values coming back; where it is to end, everything typed enters the record
 * at once and is judged.
 */
export async function saveReadBack(
  viewer: StudentViewer,
  readBackId: string,
  data: FormData,
): Promise<ReadBackSaved | Refused> {
  const outcome = submitOnce<ReadBackSaved>(viewer, readBackValuesDraft(readBackId), data, () =>
    enterReadBack(viewer, readBackId, data),
  );
  if (outcome.kind === "finished") await loadRules(viewer);
  return outcome;
}

function refuseHere(
  viewer: StudentViewer,
  readBackId: string,
  data: FormData,
  errors: Readonly<Record<string, string>>,
  refusal: string,
): Refused {
  const kind = readBackValuesDraft(readBackId);
  return { kind: "refused", draftId: keepFormDraft(viewer, kind, data, errors, refusal, viewer.student.studentId) };
}

function enterReadBack(viewer: StudentViewer, readBackId: string, data: FormData): ReadBackSaved | Refused {
  const { words, db, student } = viewer;
  const open = findOpen(viewer, readBackId);
  if (open === null) return { kind: "not-open" };
  const { places, fundamental } = open;
  const typed = changedFields(data, places);
  const why = whyNotRecorded(viewer, student);
  const { values, issues, finish } = parseRereadForm(
    typed,
    places.map((place) => ({ place, fundamental })),
  );
  // Nothing is read on after a no; dropping it stays possible.
  if (why !== null) return refuseHere(viewer, readBackId, data, {}, why);
  const emptied = emptiedPlaces(typed, places).map((place) => ({ place, typed: null }));
  updateReadBackTyped(db, student, readBackId, [...values, ...emptied]);
  const refuse = (errors: Readonly<Record<string, string>>, refusal: string): Refused =>
    refuseHere(viewer, readBackId, data, errors, refusal);
  if (issues.length > 0) {
    const errors = sayFieldIssues(words, issues);
    return refuse(errors, words.say("reread-draw.refusal", { saved: values.length, problems: issues.length }));
  }
  if (finish === "no") return { kind: "saved" };
  const end = updateReadBackFinished(db, student, readBackId, {
    now: instantOf(viewer.academy),
    values: valuesOf(viewer, readBackId, fundamental),
  });
  return end.kind === "empty" ? refuse({}, words.say("read-back.empty")) : end;
}

/** Gives an open read-back up; nothing of it enters the record. */
export function dropReadBack(viewer: StudentViewer, readBackId: string): "dropped" | "not-open" {
  return updateReadBackDropped(viewer.db, viewer.student, readBackId, instantOf(viewer.academy)).kind;
}
