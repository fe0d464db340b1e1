import { z } from "zod";
import { isCalendarDay } from "@/lib/domain/calendar-day";
import type { Edges } from "@/lib/domain/fundamental";
import type { JudgedTrack } from "@/lib/domain/judged-track";
import { LARGEST, type LineOutcome, parseJsonLine, wrong } from "./json-line";

/** A text. */
export const text = z.string(wrong("not-text"));
const number = z.number(wrong("not-number")).refine((value) => Math.abs(value) <= LARGEST, "too-large");
/** A number from 0. */
export const fromZero = number.refine((value) => value >= 0, "below-zero");
const aboveZero = number.refine((value) => value > 0, "not-above-zero");
const edge = number.nullable();

/** A field may be left out; null means the same. */
export function optional<T>(type: z.ZodType<T>) {
  return type.nullish().transform((value) => value ?? undefined);
}

const goal = z
  .object({ low: edge, high: edge }, wrong("not-object"))
  .refine(({ low, high }) => low === null || high === null || low <= high, "goal-order");

const datedGoal = z
  .object(
    { from: text.refine(isCalendarDay, "not-day"), low: edge, high: edge, worthwhileAtLeast: optional(fromZero) },
    wrong("not-object"),
  )
  .refine(({ low, high }) => low === null || high === null || low <= high, "goal-order");

const wholeFromZero = fromZero.refine(Number.isInteger, "not-whole");
const share = fromZero.refine((value) => value <= 1, "not-share");

const owningRule = z.object(
  {
    from: text.refine(isCalendarDay, "not-day"),
    sessions: wholeFromZero.refine((value) => value > 0, "not-above-zero"),
    spanDays: wholeFromZero,
    restDays: wholeFromZero,
    share,
    shareLow: share,
  },
  wrong("not-object"),
);

const session = z
  .object(
    {
      date: text.refine(isCalendarDay, "not-day"),
      captureSd: fromZero,
      swings: z.array(number, wrong("not-list")),
      captureSetup: optional(text),
      use: optional(z.boolean(wrong("not-yes-no"))),
      reader: optional(text),
      daysSincePractice: optional(fromZero),
      noiseModel: optional(text),
      readerSd: optional(aboveZero),
      readerOffsetSd: optional(fromZero),
    },
    wrong("not-object"),
  )
  .refine((value) => value.use === false || value.swings.length > 0, { message: "no-swings", path: ["swings"] });

/** A judged track as a line has it. */
export const track = z.object(
  {
    id: text,
    unit: optional(text),
    pool: optional(text),
    goal: optional(goal),
    goals: optional(z.array(datedGoal, wrong("not-list"))),
    owning: optional(z.array(owningRule, wrong("not-list"))),
    better: optional(z.enum(["up", "down"], wrong("not-up-down"))),
    smallestWorthwhile: optional(aboveZero),
    worthwhileAtLeast: optional(fromZero),
    readerSd: optional(aboveZero),
    readerOffsetSd: optional(fromZero),
    checkedCaptureSd: optional(fromZero),
    startLevel: optional(z.object({ mean: number, sd: aboveZero }, wrong("not-object"))),
    sessions: z.array(session, wrong("not-list")),
  },
  wrong("not-object"),
);

/** The track with its goal only where that has an edge. */
export function withGoal<T extends { readonly goal?: Edges | undefined }>(line: T): Omit<T, "goal"> & { goal?: Edges } {
  const { goal, ...rest } = line;
  const open = goal === undefined || (goal.low === null && goal.high === null);
  return open ? rest : { ...rest, goal };
}

/** Reads one line of judged input: a track, or what is wrong with it and where. Unknown fields are passed over. */
export function parseTrackLine(line: string): LineOutcome<JudgedTrack> {
  const outcome = parseJsonLine(line, track, "id");
  return outcome.kind === "issue" ? outcome : { kind: "ok", value: withGoal(outcome.value) };
}
