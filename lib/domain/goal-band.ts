import { differenceInYears } from "date-fns";
import { type ClubGroup, clubKindOf } from "./club-group";
import type { Edges, Fundamental, FundamentalId } from "./fundamental";

/** How wide a goal band reaches; the narrowest in force on the day wins. */
export const GOAL_SCOPES = ["built-in", "academy", "age-range", "student"] as const;

/** How wide a goal band reaches. */
export type GoalScope = (typeof GOAL_SCOPES)[number];

/** A goal band with its day and reason. */
export interface GoalBand extends Edges {
  readonly fundamentalId: FundamentalId;
  readonly clubGroup: ClubGroup;
  readonly scope: GoalScope;
  /** Years of age, both included; only where the scope is `age-range`. */
  readonly ageFrom: number | null;
  readonly ageTo: number | null;
  /** Only where the scope is `student`. */
  readonly studentId: string | null;
  /** First day in force, `YYYY-MM-DD`; the built-in band is in force since ever. */
  readonly from: string;
  readonly reason: string;
}

/** First day of a band that was always in force. */
export const SINCE_EVER = "0001-01-01";

/**
 * The goal band in force for one student, fundamental and club group on one day.
 *
 * Among the bands whose first day has come, the narrowest scope wins; within a scope, the latest.
 *
 * @param bands every dated band that might apply, any order; other fundamentals and students are passed over
 * @param birthYear for age ranges: whole years of age by 31 December of the day's year; null: no age range applies
 */
export function goalInForce(
  bands: readonly GoalBand[],
  fundamental: Fundamental,
  clubGroup: ClubGroup,
  student: { readonly id: string; readonly birthYear: number | null },
  day: string,
): GoalBand {
  const builtIn: GoalBand = {
    ...fundamental.goals[clubKindOf(clubGroup)],
    fundamentalId: fundamental.id,
    clubGroup,
    scope: "built-in",
    ageFrom: null,
    ageTo: null,
    studentId: null,
    from: SINCE_EVER,
    reason: "",
  };
  const age =
    student.birthYear === null ? null : differenceInYears(`${day.slice(0, 4)}-12-31`, `${student.birthYear}-12-31`);
  const inForce = bands.filter(
    (band) =>
      band.fundamentalId === fundamental.id &&
      band.clubGroup === clubGroup &&
      band.from <= day &&
      (band.scope !== "student" || band.studentId === student.id) &&
      (band.scope !== "age-range" ||
        (age !== null && age >= (band.ageFrom ?? 0) && age <= (band.ageTo ?? Number.POSITIVE_INFINITY))),
  );
  return inForce.reduce((best, band) => {
    const rank = GOAL_SCOPES.indexOf(band.scope) - GOAL_SCOPES.indexOf(best.scope);
    return rank > 0 || (rank === 0 && band.from >= best.from) ? band : best;
  }, builtIn);
}

/**
 * Every goal band in force over a stretch of days, oldest first, each with the day from which it held there.
 *
 * @param stretch first and last day; the first band's `from` is the first day
 */
export function goalsBetween(
  bands: readonly GoalBand[],
  fundamental: Fundamental,
  clubGroup: ClubGroup,
  student: { readonly id: string; readonly birthYear: number | null },
  stretch: readonly [first: string, last: string],
): readonly GoalBand[] {
  const [first, last] = stretch;
  const days = bands.map((band) => band.from).filter((day) => day > first && day <= last);
  // Ages are counted by the year, so that a band for an age may begin with one.
  const byAge = bands.some((band) => band.scope === "age-range");
  for (let year = Number(first.slice(0, 4)) + 1; byAge && year <= Number(last.slice(0, 4)); year++)
    days.push(`${year}-01-01`);
  const goals: GoalBand[] = [];
  for (const day of [first, ...[...new Set(days)].sort()]) {
    const inForce = goalInForce(bands, fundamental, clubGroup, student, day);
    const before = goals.at(-1);
    if (!before || before.low !== inForce.low || before.high !== inForce.high) goals.push({ ...inForce, from: day });
  }
  return goals;
}
