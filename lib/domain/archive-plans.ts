import { z } from "zod";
import { anyText, clubGroup, count, day, fundamentalId, id, instant, number, text } from "./archive-fields";
import { DRILL_DECISIONS } from "./drill-decision";

/** What a coach put in hand against the order of work, oldest first. */
export const archivedPriority = z.strictObject({
  clubGroup,
  /** Null: the order of work held again. */
  fundamentalId: fundamentalId.nullable(),
  reason: text,
  day,
  who: text,
  recordedAt: instant,
});

/** What was decided on the day on which a drill was to be measured again, oldest first. */
const archivedDecision = z.strictObject({
  decision: z.enum(DRILL_DECISIONS),
  why: text,
  remeasureWas: day.nullable(),
  day,
  who: text,
  recordedAt: instant,
});

/** What a family was told to film. */
export const archivedFilmPlan = z.strictObject({
  id,
  clubGroup,
  madeOn: day,
  dueOn: day,
  /** JSON. */
  body: anyText,
  who: text,
  recordedAt: instant,
  remindedAt: instant.nullable(),
  voidedAt: instant.nullable(),
});

/** An academy's rule of when a fundamental is owned. */
export const archivedOwningRule = z.strictObject({
  number: count,
  fromDay: day,
  sessions: count,
  spanDays: count,
  restDays: count,
  share: number.min(0).max(1),
  shareLow: number.min(0).max(1),
  who: text,
  why: text,
  recordedAt: instant,
});

// Files from before a dose was more than words have none of its parts.
const dose = {
  dose: text.default(""),
  reps: count.nullable().default(null),
  minutesADay: count.nullable().default(null),
  daysAWeek: count.nullable().default(null),
};

/** A drill of the library, and how it is usually given. */
export const archivedDrill = z.strictObject({
  id,
  name: text,
  fundamentalId,
  how: text,
  cautions: text,
  ...dose,
  remeasureDays: count.nullable().default(null),
  // Files from before a drill could be changed or retired have neither.
  retiredOn: day.nullable().default(null),
  /** JSON: how it was described before. */
  earlier: anyText.default("[]"),
});

/** A drill as it was given. */
export const archivedAssignment = z.strictObject({
  id,
  drillId: id,
  fundamentalId,
  startDay: day,
  endDay: day.nullable(),
  ...dose,
  stopRule: text.default(""),
  remeasureOn: day.nullable().default(null),
  who: text,
  recordedAt: instant.nullable(),
  endWhy: text.nullable(),
  voidedAt: instant.nullable(),
  decisions: z.array(archivedDecision).default([]),
});
