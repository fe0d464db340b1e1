import type { CalendarDay } from "./calendar-day";

/** When a fundamental is owned: what the last used sessions have to show. */
export interface OwningRule {
  /** Used sessions in a row, each with the level inside the goal band. */
  readonly sessions: number;
  /** Days from the first to the last of them, at least. */
  readonly spanDays: number;
  /** Days between the last practice and the last of them, at least. */
  readonly restDays: number;
  /** Share of swings inside the band, 0 to 1, at least. */
  readonly share: number;
  /** Lower end of the share's 80 of 100 interval, 0 to 1, at least. */
  readonly shareLow: number;
}

/** A rule with its first day: looks at sessions of that day and later ask it, until the next rule begins. */
export interface DatedOwningRule extends OwningRule {
  readonly from: CalendarDay;
}

/** A rule as an academy set it. */
export interface RecordedOwningRule extends DatedOwningRule {
  readonly number: number;
  readonly who: string;
  readonly why: string;
  /** ISO instant. */
  readonly recordedAt: string;
}

/**
 * The rule of a day among an academy's: the latest entered of those that have begun. None is entered with a day before that of
 * one that has begun, so that only a planned one is replaced by one that begins earlier.
 *
 * @param rules in the order of entry
 * @returns null before the first one: the built-in rule holds
 */
export function owningRuleOn<T extends DatedOwningRule>(rules: readonly T[], day: CalendarDay): T | null {
  return rules.findLast((rule) => rule.from <= day) ?? null;
}

/** The rules that are planned and come to hold, in the order of entry: none entered later begins by their day. */
export function plannedRules<T extends DatedOwningRule>(rules: readonly T[], today: CalendarDay): readonly T[] {
  return rules.filter((rule) => rule.from > today && owningRuleOn(rules, rule.from) === rule);
}

/**
 * The rule that took the place of another before that came to decide: the first that was entered after it and begins by its day.
 *
 * @param rules in the order of entry
 * @returns null: it holds from its day, or will
 */
export function replacedBy<T extends DatedOwningRule>(rules: readonly T[], rule: T): T | null {
  return rules.slice(rules.indexOf(rule) + 1).find(({ from }) => from <= rule.from) ?? null;
}
