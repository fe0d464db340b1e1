import { dayFromNumber, dayNumber } from "@/lib/domain/calendar-day";
import type { ComparedTrack } from "@/lib/domain/compared-track";
import { readReference } from "@/tests/reference/read-reference";

/** A trial with one value before and up to four after; arrays run in parallel, one entry a person. */
export interface RepeatedTrial {
  /** Days of the visits after, from the value before. */
  readonly days: readonly number[];
  readonly stratum: readonly string[];
  readonly treated: readonly number[];
  readonly before: readonly number[];
  /** Null: the person didn't come. */
  readonly after: readonly (readonly (number | null)[])[];
}

interface Effect {
  readonly people: number;
  readonly estimate: number;
  readonly low95: number;
  readonly high95: number;
  readonly p: number;
  /** Lowest and highest estimate when one person is left out. */
  readonly leftOut: readonly [number, number];
}

/** What R makes of it. */
export interface RepeatedFigures {
  readonly mixed: { readonly estimate: number; readonly error: number };
  readonly complete: { readonly people: number; readonly estimate: number };
  readonly effect: Effect;
  readonly retained: Effect;
  readonly cameBack: { readonly estimate: number; readonly low95: number; readonly high95: number };
  readonly gained: number;
  /** Sd of one visit about its neighbours. */
  readonly visitSd: number;
}

/** The trial and its figures. */
export function repeatedTrial(): { readonly trial: RepeatedTrial; readonly figures: RepeatedFigures } {
  const [one] = readReference<RepeatedTrial, RepeatedFigures>("12_repeated_bdi");
  const { input, expected } = one as { input: RepeatedTrial; expected: RepeatedFigures };
  return { trial: input, figures: expected };
}

const FIRST = dayNumber("2026-01-05");

/**
 * Each person of the trial as a student with one reading a visit, less being better: the treatment is a drill from the day
 * after the value before to the first visit, treatment as usual is waiting from that day to the last visit, and the stratum
 * is the coach, so that its own level is taken out. A visit that wasn't made is no session.
 */
export function repeatedPeople({ days, stratum, treated, before, after }: RepeatedTrial): readonly ComparedTrack[] {
  const on = (days: number) => dayFromNumber(FIRST + days);
  return before.map((value, person) => ({
    id: `p${person}`,
    student: `p${person}`,
    coach: stratum[person] as string,
    unit: "points",
    better: "down",
    sessions: [
      { date: on(0), captureSd: 0, swings: [value] },
      ...(after[person] ?? []).flatMap((later, visit) =>
        later === null ? [] : [{ date: on(days[visit] as number), captureSd: 0, swings: [later] }],
      ),
    ],
    ...(treated[person] === 1
      ? { drills: [{ drill: "treated", start: on(1), end: on(days[0] as number), assigned: "chance" as const }] }
      : { drills: [], waiting: [{ from: on(1), to: on(days.at(-1) as number) }] }),
  }));
}
