import { dayNumber } from "@/lib/domain/calendar-day";
import { type FairAllocation, type FairStep, type FairTest, isRunning } from "@/lib/domain/fair-test";

/** How far a test by the lot has come. */
export interface FairTestState {
  readonly running: "yes" | "no";
  readonly drawn: number;
  /** Draws whose films are all in: the days after them are over. */
  readonly complete: readonly FairAllocation[];
  /** The next planned look: its number from 1, how many draws it needs, and whether they are there. Null: none is left. */
  readonly next: { readonly number: number; readonly needs: number; readonly due: "yes" | "no" } | null;
}

/**
 * How far a test has come on a day. Looks are planned at equal shares of the students; one that isn't due is not to be taken.
 *
 * @param draws all of them, `steps` in order
 */
export function fairTestState(
  test: Pick<FairTest, "students" | "looks" | "days">,
  draws: readonly FairAllocation[],
  steps: readonly FairStep[],
  today: string,
): FairTestState {
  const complete = draws.filter(({ day }) => dayNumber(today) - dayNumber(day) > test.days);
  const number = steps.filter(({ kind }) => kind === "look").length + 1;
  const running = isRunning(test, steps) ? "yes" : "no";
  const needs = Math.ceil((test.students * number) / test.looks);
  const due = complete.length >= needs ? "yes" : "no";
  return { running, drawn: draws.length, complete, next: running === "yes" ? { number, needs, due } : null };
}

/** The share of the plan that is in at a look: all of it at the last one. */
export function fairFraction(test: Pick<FairTest, "students" | "looks">, look: number, complete: number): number {
  return look >= test.looks ? 1 : Math.min(1, complete / test.students);
}
