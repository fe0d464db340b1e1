import { differenceInYears } from "date-fns";
import { type ClubGroup, clubKindOf } from "./club-group";
import type { Edges, Fundamental, FundamentalId } from "./fundamental";

/** How wide a goal band reaches; the narrowest in force on the day wins. */
export const GOAL_SCOPES = ["built-in", "academy", "age-range", "student"] as const;

/** How wide a goal band reaches. */
export type GoalScope = (typeof GOAL_SCOPES)[number];

/** A goal band with its day and reason. One of an academy, an age range or a student that has no edges gives the word back to the wider one. */
export interface GoalBand extends Edges {
  readonly fundamentalId: FundamentalId;
  readonly clubGroup: ClubGroup;
  readonly scope: GoalScope;
  /** Years of age, both included; only where the scope is `age-range`. */
  readonly ageFrom: number | null;
  readonly ageTo: number | null;
  /** Only where the scope is `student`. */
  readonly studentId: string | null;
  /** First day in force, `YYYY-MM-DD`; the built-in band is in force from the start. */
  readonly from: string;
  readonly reason: string;
  /**
   * First day whose verdicts it decides, where it was entered after its own first day: what was said of films until then
   * keeps its word. Absent: its first day.
   */
  readonly decidesFrom?: string;
  /** A later entered one of its own series began earlier, before this one had begun: it never holds. Absent: no. */
  readonly replaced?: true;
}

/** A band as somebody set it. */
export type RecordedBand = GoalBand & {
  readonly id: string;
  /** Empty: from before that was kept, or built with the demo. */
  readonly who: string;
  /** ISO instant. */
  readonly createdAt: string;
};

/** The bands as verdicts take them: dated back, one decides from the day on which it was entered. */
export function asDecided<T extends GoalBand>(bands: readonly T[]): readonly T[] {
  return bands.map((band) => (band.decidesFrom === undefined ? band : { ...band, from: band.decidesFrom }));
}

/** Whether a band gives the word back to the wider one. */
export function givesBack({ low, high, scope }: Pick<GoalBand, "low" | "high" | "scope">): boolean {
  return scope !== "built-in" && low === null && high === null;
}

/** What a band stands in for: the earlier ones of its own scope, of its age range or student. */
export function goalSeries({ scope, ageFrom, ageTo, studentId }: GoalBand): string {
  return `${scope} ${ageFrom ?? ""} ${ageTo ?? ""} ${studentId ?? ""}`;
}

/** First day of a band that was always in force. */
export const SINCE_EVER = "0001-01-01";

/**
 * The goal band in force for one student, fundamental and club group on one day.
 *
 * Among the bands whose first day has come, the narrowest scope wins; within a scope, the latest. What was given back
 * leaves the word to the wider scope; what was replaced before it began never holds.
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
      band.replaced !== true &&
      (band.scope !== "student" || band.studentId === student.id) &&
      (band.scope !== "age-range" ||
        (age !== null && age >= (band.ageFrom ?? 0) && age <= (band.ageTo ?? Number.POSITIVE_INFINITY))),
  );
  const latest = new Map<string, GoalBand>();
  for (const band of inForce) {
    const before = latest.get(goalSeries(band));
    if (before === undefined || band.from >= before.from) latest.set(goalSeries(band), band);
  }
  return inForce.reduce((best, band) => {
    if (latest.get(goalSeries(band)) !== band || givesBack(band)) return best;
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
