import { attainableCares } from "./plan-futures";

/** How carefully the phone is set up in a plan: as it has been, with half of that error, or with what a check leaves. */
export const CARE_NAMES = ["usual", "half", "checked"] as const;

/** One of them. */
export type CareName = (typeof CARE_NAMES)[number];

/** A care that can be asked for: its share of the usual camera error, above 0 to 1. */
export interface AskableCare {
  readonly name: CareName;
  readonly care: number;
}

/** A care that leaves less than this of what another one leaves is worth a stop of its own. */
const CLEARLY_LESS = 0.8;

/**
 * The cares that a track can be asked for, the loosest first. No more is asked than a check leaves; where a check leaves
 * clearly less than half, that is a stop of its own.
 *
 * @param usualCaptureSd median camera sd of the used sessions, in the unit, 0 or more
 * @param checkedCaptureSd what a check leaves, same unit; undefined: not known
 */
export function askableCares(usualCaptureSd: number, checkedCaptureSd: number | undefined): readonly AskableCare[] {
  const usual: AskableCare = { name: "usual", care: 1 };
  // A phone without error can't stand better.
  if (!(usualCaptureSd > 0)) return [usual];
  const offered = attainableCares(usualCaptureSd, checkedCaptureSd).filter((care) => care < 1);
  const cares = [usual, ...offered.map((care): AskableCare => ({ name: "half", care }))];
  const least = cares.at(-1)?.care ?? 1;
  const checked = (checkedCaptureSd ?? 0) / usualCaptureSd;
  return checked > 0 && checked < least * CLEARLY_LESS ? [...cares, { name: "checked", care: checked }] : cares;
}
