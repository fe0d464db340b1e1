import { randomUUID } from "node:crypto";
import { inTransaction } from "@/db/client";
import {
  readFirstReaders,
  readReaderErrors,
  readRereadCandidates,
  readRereadDraws,
  readRereadItems,
  readRereadPairs,
  readRereadStudents,
} from "@/db/read/rereads";
import {
  insertReaderError,
  insertRereadDraw,
  insertRereadValues,
  insertSameDraw,
  updateDrawFinished,
} from "@/db/write/rereads";
import type { Fundamental } from "@/lib/domain/fundamental";
import type { RereadDraw } from "@/lib/domain/reread";
import { type FieldIssue, fieldText } from "@/lib/ingest/field-issue";
import { parseRereadForm, parseRereadWish, parseSecondReader, type RereadWish } from "@/lib/ingest/parse-reread-form";
import { type DrawnRereads, drawRereads } from "@/lib/verdict/draw-rereads";
import { fitReaderError } from "@/lib/verdict/fit-reader-error";
import { READER_ERROR_THRESHOLDS } from "@/lib/verdict/reader-error-thresholds";
import { chance } from "../chance";
import { currentInstant } from "../clock";
import { standingsOf } from "../consent/consent-gate";
import { kindOf } from "../draft/draft-forms";
import { keepFormDraft } from "../draft/form-draft";
import { sayFieldIssues } from "../draft/say-field-issues";
import { type Refused, submitOnce } from "../draft/submit-once";
import { type Viewer, wholeAcademy } from "../gate";
import { loadAcademyRules } from "../season/student-record";

/** The kinds under which refused forms are kept. */
export const WISH_DRAFT = "reread-wish";
export const VALUES_FORM = "reread-values";
export const SECOND_FORM = "reread-second";
export function valuesDraft(drawId: string): string {
  return kindOf(VALUES_FORM, "", drawId);
}
export function secondDraft(drawId: string): string {
  return kindOf(SECOND_FORM, "", drawId);
}

const HOUR = 3_600_000;

/** The hour from which a wait is counted; the demo's today stands still, and ends in the evening. */
function instantOf(viewer: Viewer): string {
  return viewer.academy.fixedToday === null ? currentInstant() : `${viewer.academy.fixedToday}T22:00:00.000Z`;
}

export function findDraw(viewer: Viewer, drawId: string): RereadDraw | null {
  return readRereadDraws(viewer.db, viewer.scope).find((draw) => draw.id === drawId) ?? null;
}

/** Students who may be measured today. */
function consenting(viewer: Viewer): ReadonlySet<string> {
  return new Set([...standingsOf(viewer, "measure")].flatMap(([id, { kind }]) => (kind === "given" ? [id] : [])));
}

/** What was read after this instant may still be remembered, and isn't drawn. */
export function drawableBefore(viewer: Viewer): string {
  const wait = READER_ERROR_THRESHOLDS.waitHours.value * HOUR;
  return new Date(Date.parse(instantOf(viewer)) - wait).toISOString();
}

/** Draws what a wish asks for, from films of students who may be measured. */
function drawFor(viewer: Viewer, wish: RereadWish, fundamentals: readonly Fundamental[]): DrawnRereads {
  const { db, scope } = viewer;
  const allowed = consenting(viewer);
  const candidates = fundamentals
    .filter((each) => each.derivedFrom === null && (wish.fundamentalId === null || wish.fundamentalId === each.id))
    .flatMap(({ id, view }) =>
      readRereadCandidates(db, scope, { fundamentalId: id, view, reader: wish.reader, level: wish.level }),
    )
    .filter((candidate) => allowed.has(candidate.studentId));
  const pairs = new Map<string, number>();
  for (const pair of readRereadPairs(db, scope))
    if (pair.level === wish.level && pair.reader === pair.firstReader)
      pairs.set(pair.fundamentalId, (pairs.get(pair.fundamentalId) ?? 0) + 1);
  return drawRereads(candidates, { count: wish.count, readBefore: drawableBefore(viewer), pairs }, chance);
}

interface Drawn {
  readonly kind: "drawn";
  readonly drawId: string;
}

/** Draws readings to be read again, once; refused where there are none. */
export function drawAgain(viewer: Viewer, data: FormData): Drawn | Refused {
  return submitOnce<Drawn>(viewer, WISH_DRAFT, data, () => enterDraw(viewer, data));
}

function enterDraw(viewer: Viewer, data: FormData): Drawn | Refused {
  const { db, scope, words } = viewer;
  const refuse = (errors: Readonly<Record<string, string>>, refusal: string): Refused => ({
    kind: "refused",
    draftId: keepFormDraft(viewer, WISH_DRAFT, data, errors, refusal),
  });
  const { fundamentals } = loadAcademyRules(db, scope, viewer.academy);
  const usual = READER_ERROR_THRESHOLDS.drawn.value;
  const parsed = parseRereadWish(data, { fundamentals, readers: readFirstReaders(db, scope), usual });
  if (parsed.kind === "issues") {
    const errors = sayFieldIssues(words, parsed.issues);
    return refuse(errors, words.say("reread-form.refusal", { problems: Object.keys(errors).length }));
  }
  const drawn = drawFor(viewer, parsed.value, fundamentals);
  if (drawn.items.length === 0) {
    const { noReference, tooFresh, again } = drawn;
    return refuse({}, words.say("reread-form.none", { noReference, tooFresh, again }));
  }
  const drawId = randomUUID();
  const { reader, level } = parsed.value;
  const items = drawn.items.flatMap(({ filmReference, ...place }) =>
    filmReference === null ? [] : [{ ...place, filmReference }],
  );
  insertRereadDraw(db, scope, {
    ...{ id: drawId, reader, level, items },
    ...{ who: viewer.name, day: viewer.today, drawnAt: currentInstant() },
  });
  return { kind: "drawn", drawId };
}

/** Gives the readings of a finished draw to a second reader, once. */
export function drawForSecond(viewer: Viewer, drawId: string, data: FormData): Given | Refused {
  return submitOnce<Given>(viewer, secondDraft(drawId), data, () => enterSecond(viewer, drawId, data));
}

type Given = Drawn | { readonly kind: "not-there" };

function enterSecond(viewer: Viewer, drawId: string, data: FormData): Given | Refused {
  const { db, scope, words } = viewer;
  const draw = findDraw(viewer, drawId);
  if (draw === null || draw.finishedOn === null) return { kind: "not-there" };
  const refuse = (error: string): Refused => ({
    kind: "refused",
    draftId: keepFormDraft(viewer, secondDraft(drawId), data, { reader: error }, words.say("reread-second.refusal")),
  });
  const parsed = parseSecondReader(data);
  if (parsed.kind === "issues") return refuse(sayFieldIssues(words, parsed.issues).reader ?? "");
  const taken = readRereadDraws(db, scope).filter((each) => each.id === drawId || each.sameAs === drawId);
  if (taken.some((each) => each.reader === parsed.value)) return refuse(words.say("reread-second.taken"));
  const id = randomUUID();
  const stamp = { who: viewer.name, day: viewer.today, drawnAt: currentInstant() };
  const made = insertSameDraw(db, scope, { id, sameAs: drawId, reader: parsed.value, ...stamp });
  return made.kind === "inserted" ? { kind: "drawn", drawId: id } : { kind: "not-there" };
}

/** Fits the error of one fundamental to all finished draws, and keeps it where it is new. */
function keepError({ db, scope: seen, today }: Viewer, fundamental: Fundamental): void {
  const scope = wholeAcademy(seen);
  const pairs = readRereadPairs(db, scope).filter((pair) => pair.fundamentalId === fundamental.id);
  const newest = readReaderErrors(db, scope).findLast((each) => each.fundamentalId === fundamental.id);
  const fitted = fitReaderError(pairs, fundamental, newest, today);
  if (fitted) insertReaderError(db, scope, fitted, currentInstant());
}

/** Ends a draw and fits what it measured, both or neither. */
function finishDraw(viewer: Viewer, drawId: string, measured: readonly Fundamental[]): "finished" | "not-open" {
  const { db, scope } = viewer;
  return inTransaction(db, () => {
    const { kind } = updateDrawFinished(db, scope, drawId, { day: viewer.today, now: currentInstant() });
    if (kind === "finished") for (const fundamental of measured) keepError(viewer, fundamental);
    return kind;
  });
}

/** New values for films of students who may not be measured any more: they are kept in the form and enter nothing. */
function withoutConsent(
  viewer: Viewer,
  drawId: string,
  items: readonly { readonly place: number; readonly typed: string | null }[],
  data: FormData,
): readonly FieldIssue[] {
  const allowed = consenting(viewer);
  const whose = readRereadStudents(viewer.db, viewer.scope, drawId);
  return items.flatMap(({ place, typed }) => {
    const field = `v.${place}`;
    const isNew = fieldText(data, field) !== "" && fieldText(data, field) !== typed;
    return isNew && !allowed.has(whose.get(place) ?? "") ? [{ field, code: "reread-without-consent", args: {} }] : [];
  });
}

/** Keeps what was typed into an open draw; every good value is kept, bad ones come back; ends the draw where that is wished. */
export function saveRereads(viewer: Viewer, drawId: string, data: FormData): Saved | Refused {
  return submitOnce<Saved>(viewer, valuesDraft(drawId), data, () => enterRereads(viewer, drawId, data));
}

interface Saved {
  readonly kind: "saved" | "finished" | "not-open";
}

function enterRereads(viewer: Viewer, drawId: string, data: FormData): Saved | Refused {
  const { db, scope, words } = viewer;
  const draw = findDraw(viewer, drawId);
  if (draw === null || draw.finishedOn !== null) return { kind: "not-open" };
  const { fundamentals } = loadAcademyRules(db, scope, viewer.academy);
  const items = readRereadItems(db, scope, drawId).flatMap(({ place, fundamentalId, typed }) => {
    const fundamental = fundamentals.find((each) => each.id === fundamentalId);
    return fundamental ? [{ place, fundamental, typed }] : [];
  });
  const unasked = withoutConsent(viewer, drawId, items, data);
  const open = items.filter(({ place }) => !unasked.some(({ field }) => field === `v.${place}`));
  const { values, issues: wrong, finish } = parseRereadForm(data, open);
  const issues = [...wrong, ...unasked];
  const why = words.say("reread-draw.corrected");
  insertRereadValues(db, scope, drawId, values, { now: currentInstant(), who: viewer.name, why });
  const refuse = (errors: Readonly<Record<string, string>>, refusal: string): Refused => ({
    kind: "refused",
    draftId: keepFormDraft(viewer, valuesDraft(drawId), data, errors, refusal),
  });
  if (issues.length > 0) {
    const errors = sayFieldIssues(words, issues);
    return refuse(errors, words.say("reread-draw.refusal", { saved: values.length, problems: issues.length }));
  }
  if (finish === "no") return { kind: "saved" };
  const measured = [...new Set(items.map((item) => item.fundamental))];
  if (finishDraw(viewer, drawId, measured) === "not-open") return refuse({}, words.say("reread-draw.empty"));
  return { kind: "finished" };
}
