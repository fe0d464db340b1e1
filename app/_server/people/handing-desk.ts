import { randomUUID } from "node:crypto";
import { inTransaction } from "@/db/client";
import type { Charge } from "@/db/read/people";
import { insertHanding, updateCoverEnded, updateHandingBack } from "@/db/write/handing";
import { dayFromNumber, dayNumber } from "@/lib/domain/calendar-day";
import { chargeOn } from "@/lib/domain/charge";
import { type Handing, parseHandingForm } from "@/lib/ingest/parse-handing-form";
import { sayDay } from "@/lib/words/day-words";
import { currentInstant, instantOf } from "../clock";
import { kindOf } from "../draft/draft-forms";
import { keepFormDraft } from "../draft/form-draft";
import { sayFieldIssues } from "../draft/say-field-issues";
import { type Refused, submitOnce } from "../draft/submit-once";
import type { StudentViewer } from "../gate";
import { type HandingState, handingState, lastCoach } from "./handing-state";
import { settleDrafts } from "./settle-drafts";

/** The form among those that are kept. */
export const HANDING_FORM = "handing-form";

/** The kind under which it is kept. */
export function handingDraft(studentId: string): string {
  return kindOf(HANDING_FORM, studentId);
}

/** Why a hand-over can't be as the charges stand; null: it can. */
export type HandingObstacle = "planned" | "covered" | "nobodys" | null;

/** What stands in the way of a hand-over or a cover. */
export function handingObstacle(state: HandingState, wished: Handing): HandingObstacle {
  if (wished.kind === "own") return state.planned === null ? null : "planned";
  if (state.own.length === 0) return "nobodys";
  const { coachId, from, until } = wished;
  const overlaps = state.covers.some(
    (each) =>
      each.coachId === coachId && each.fromDay <= (until ?? from) && (each.untilDay === null || each.untilDay >= from),
  );
  return overlaps ? "covered" : null;
}

/** Writes a hand-over or a cover that nothing stands in the way of; returns its id. To be called inside a transaction. */
export function writeHanding(viewer: StudentViewer, state: HandingState, wished: Handing): string {
  const { db, student, today, academy, name } = viewer;
  const { kind, coachId, from, until, note } = wished;
  const id = randomUUID();
  const coach = state.coaches.find(({ userId }) => userId === coachId);
  if (!coach) throw new Error(`nobody coaches here under ${coachId}`);
  const handsOver = kind === "own";
  // Whoever hands over keeps no cover of before, and whoever is given the student needs none.
  const covering = new Set([coachId, ...state.own.map((each) => each.coachId)]);
  const reaching = state.covers.filter(
    (each) => covering.has(each.coachId) && (each.untilDay === null || each.untilDay >= from),
  );
  insertHanding(db, student, {
    ...{ id, kind, coachId, coach: coach.name, fromCoachId: lastCoach(state), note: note || null },
    ...{ fromDay: from, dayBefore: dayFromNumber(dayNumber(from) - 1), untilDay: until },
    ends: handsOver ? state.own.map((each) => each.id) : [],
    cutsCovers: handsOver ? reaching.map((each) => each.id) : [],
    isPlanned: from > today,
    draftsOf: handsOver && from <= today ? state.own.map((each) => each.coachId) : [],
    ...{ who: name, recordedAt: currentInstant(), now: instantOf(academy) },
  });
  settleDrafts(viewer);
  return id;
}

interface Handed {
  readonly kind: "handed";
  readonly chargeId: string;
}

/** `not-yours`: whoever only covers a student gives them to nobody. */
type Outcome = Handed | { readonly kind: "not-yours" };

/** Hands a student over or has them covered, once; a refused form is kept. */
export function handOver(viewer: StudentViewer, data: FormData): Outcome | Refused {
  return submitOnce<Outcome>(viewer, handingDraft(viewer.student.studentId), data, () => enterHanding(viewer, data));
}

function enterHanding(viewer: StudentViewer, data: FormData): Outcome | Refused {
  const { words, db, student, today } = viewer;
  return inTransaction(db, () => {
    const state = handingState(viewer);
    if (state.may === "look") return { kind: "not-yours" };
    const refuse = (errors: Readonly<Record<string, string>>): Refused => ({
      kind: "refused",
      draftId: keepFormDraft(viewer, handingDraft(student.studentId), data, errors, words.say("handing-form.refusal")),
    });
    const parsed = parseHandingForm(data, { today, coaches: state.coaches.map(({ userId }) => userId) });
    if (parsed.kind === "issues") return refuse(sayHandingIssues(viewer, parsed.issues));
    const obstacle = handingObstacle(state, parsed.value);
    if (obstacle !== null) return refuse({ kind: words.say(`handing-form.why.${obstacle}`) });
    return { kind: "handed", chargeId: writeHanding(viewer, state, parsed.value) };
  });
}

/** Days among the arguments are said as days. */
export function sayHandingIssues(
  { words }: Pick<StudentViewer, "words">,
  issues: Parameters<typeof sayFieldIssues>[1],
): Readonly<Record<string, string>> {
  const said = issues.map(({ args, ...issue }) => ({
    ...issue,
    args: Object.fromEntries(
      Object.entries(args).map(([name, value]) => [
        name,
        (name === "today" || name === "latest") && typeof value === "string" ? sayDay(words, value, "day-year") : value,
      ]),
    ),
  }));
  return sayFieldIssues(words, said);
}

/** Takes back what is planned, or ends a cover that runs; a hand-over that has begun is handed back instead. */
export function takeHandingBack(viewer: StudentViewer, chargeId: string): "done" | "unchanged" {
  const { db, student, today, name } = viewer;
  return inTransaction(db, () => {
    const state = handingState(viewer);
    const charge = state.charges.find(({ id }) => id === chargeId);
    if (state.may === "look" || charge === undefined) return "unchanged";
    const by = { id: chargeId, who: name, recordedAt: currentInstant() };
    const stands = chargeOn(charge, today);
    if (stands === "in-force" && charge.kind === "cover") {
      const ended = updateCoverEnded(db, student, { ...by, today });
      settleDrafts(viewer);
      return ended === "ended" ? "done" : "unchanged";
    }
    return stands === "to-come" ? takePlannedBack(viewer, state, charge) : "unchanged";
  });
}

/** Takes a charge back that is still to come; what it would have ended goes on as it did. To be called inside a transaction. */
export function takePlannedBack(
  { db, student, name, academy }: StudentViewer,
  state: HandingState,
  { id, kind, fromDay }: Pick<Charge, "id" | "kind" | "fromDay">,
): "done" | "unchanged" {
  const before = dayFromNumber(dayNumber(fromDay) - 1);
  const endsThen = ({ untilDay }: Charge): boolean => kind === "own" && untilDay === before;
  const back = {
    ...{ id, who: name, recordedAt: currentInstant(), now: instantOf(academy) },
    reopens: state.own.filter(endsThen).map((each) => each.id),
    restores: state.charges.filter((each) => each.kind === "cover" && endsThen(each)).map((each) => each.id),
  };
  return updateHandingBack(db, student, back) === "taken-back" ? "done" : "unchanged";
}
