import type { Direction } from "@/lib/domain/track-verdict";

/** A proved change of one fundamental that stands on the roster’s list, or of contact. */
export interface DatedChange {
  /** Of a fundamental its id. */
  readonly of: { readonly kind: "fundamental"; readonly id: string } | { readonly kind: "contact" };
  /** Up is better: toward the band, or more solid strikes. */
  readonly way: Direction;
  /** First and last day between which it happened, with its doubt, `YYYY-MM-DD`. */
  readonly from: string;
  readonly to: string;
}

/** What got better and what got worse over the same days. */
export interface TradeOff<Change> {
  readonly up: Change;
  readonly down: Change;
}

/**
 * Pairs of proved changes, one for the better and one for the worse, whose stretches of days overlap. That they came together is
 * all that is known: nothing here says that one made the other.
 *
 * @param changes of one student with one group of clubs, any order; moves that are neither better nor worse are no part of it
 * @returns the same objects that were given, by the day on which the later of the two began, then as given
 */
export function tradeOffs<Change extends DatedChange>(changes: readonly Change[]): readonly TradeOff<Change>[] {
  const ups = changes.filter(({ way }) => way === "up");
  const downs = changes.filter(({ way }) => way === "down");
  return downs
    .flatMap((down) => ups.filter((up) => up.from <= down.to && down.from <= up.to).map((up) => ({ up, down })))
    .sort((a, b) => compare(began(a), began(b)));
}

function began({ up, down }: TradeOff<DatedChange>): string {
  return up.from > down.from ? up.from : down.from;
}

function compare(a: string, b: string): number {
  return a < b ? -1 : Number(a > b);
}
