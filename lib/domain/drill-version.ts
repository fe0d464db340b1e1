import { z } from "zod";
import type { CalendarDay } from "./calendar-day";

/** A drill of the library as it is described and usually given; null and empty: not said. */
export interface DrillDescription {
  readonly name: string;
  readonly fundamentalId: string;
  readonly how: string;
  readonly cautions: string;
  /** How much and how often, in words; the figures beside it. */
  readonly dose: string;
  readonly reps: number | null;
  readonly minutesADay: number | null;
  readonly daysAWeek: number | null;
  /** Days from a drill's first day to its next measure. */
  readonly remeasureDays: number | null;
  /** First day on which it isn't offered any more; null: it is offered. */
  readonly retiredOn: CalendarDay | null;
}

/** How a drill was described until a day, and who changed it why. */
export type EarlierDrill = DrillDescription & {
  /** The day on which it was changed: from that day on the next one holds. */
  readonly until: CalendarDay;
  readonly who: string;
  readonly why: string;
  /** ISO instant. */
  readonly changedAt: string;
};

const figure = z.number().int().min(0).nullable();

const earlier = z.array(
  z.object({
    name: z.string(),
    fundamentalId: z.string(),
    how: z.string(),
    cautions: z.string(),
    dose: z.string(),
    reps: figure,
    minutesADay: figure,
    daysAWeek: figure,
    remeasureDays: figure,
    retiredOn: z.string().nullable(),
    until: z.string(),
    who: z.string(),
    why: z.string(),
    changedAt: z.string(),
  }),
);

/**
 * How a drill was described before, oldest first.
 *
 * @param text JSON, as it is kept beside the drill
 * @throws SyntaxError or ZodError for a text that isn't such a list
 */
export function parseEarlierDrills(text: string): readonly EarlierDrill[] {
  return earlier.parse(JSON.parse(text));
}

/**
 * How a drill was described on a day: what stood when the day began, and on the day of a change what it was changed to.
 *
 * @param earlierOnes oldest first
 */
export function describedOn(
  now: DrillDescription,
  earlierOnes: readonly EarlierDrill[],
  day: CalendarDay,
): DrillDescription {
  return earlierOnes.find(({ until }) => day < until) ?? now;
}

/** Whether a drill is offered on a day. */
export function isOffered({ retiredOn }: Pick<DrillDescription, "retiredOn">, day: CalendarDay): boolean {
  return retiredOn === null || retiredOn > day;
}

/** The parts in which two descriptions differ, in the order of a form; empty: they say the same. */
export function changedParts(before: DrillDescription, after: DrillDescription): readonly (keyof DrillDescription)[] {
  const parts = ["name", "fundamentalId", "how", "cautions", "dose", "reps", "minutesADay", "daysAWeek"] as const;
  return [...parts, "remeasureDays" as const, "retiredOn" as const].filter((part) => before[part] !== after[part]);
}
