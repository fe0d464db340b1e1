import type { RereadCandidate } from "@/lib/domain/reread";
import { randomOrder } from "./random-order";
import { READER_ERROR_THRESHOLDS as T } from "./reader-error-thresholds";

/** What a draw is made for. */
export interface DrawWish {
  /** How many readings. */
  readonly count: number;
  /** ISO instant; only what was entered before it is drawn. */
  readonly readBefore: string;
  /** Pairs that are on file already, by fundamental; a fundamental that isn't named has none. */
  readonly pairs: ReadonlyMap<string, number>;
}

/** The readings drawn, in the order of reading, and why others couldn't be. */
export interface DrawnRereads {
  readonly items: readonly RereadCandidate[];
  /** Readings that could have been drawn. */
  readonly eligible: number;
  /** Readings whose film has no reference, so that it can't be opened again. */
  readonly noReference: number;
  /** Readings entered too lately. */
  readonly tooFresh: number;
  /** Readings that this reader has read again before. */
  readonly again: number;
}

/** How often each name was counted. */
class Tally {
  readonly #counts = new Map<string, number>();
  of(name: string): number {
    return this.#counts.get(name) ?? 0;
  }
  add(name: string): void {
    this.#counts.set(name, this.of(name) + 1);
  }
}

/** So many fundamentals as a draw can measure, those with the fewest pairs; among equals those with most to draw from. */
function fewestRead(open: readonly RereadCandidate[], { count, pairs }: DrawWish): ReadonlySet<string> {
  const offered = new Tally();
  for (const candidate of open) offered.add(candidate.fundamentalId);
  const pairsOf = (id: string): number => pairs.get(id) ?? 0;
  const ids = [...new Set(open.map((candidate) => candidate.fundamentalId))].sort(
    (a, b) => pairsOf(a) - pairsOf(b) || offered.of(b) - offered.of(a) || (a < b ? -1 : 1),
  );
  return new Set(ids.slice(0, Math.max(1, Math.ceil(count / T.pairsNeeded.value))));
}

/**
 * Draws first readings to be read again: spread evenly over fundamentals, then over students, then over their sessions, and by
 * chance within these; in random order.
 *
 * Of several fundamentals it takes those with the fewest pairs, as many as it can measure. Nothing that was read is looked at,
 * so no value can be drawn for being odd.
 *
 * @param candidates first readings of one reader; any order
 * @param chance numbers from 0 to below 1
 * @returns fewer than wished where there are fewer
 */
export function drawRereads(
  candidates: readonly RereadCandidate[],
  wish: DrawWish,
  chance: () => number,
): DrawnRereads {
  const found = candidates.filter((candidate) => candidate.filmReference !== null);
  const settled = found.filter((candidate) => candidate.readAt <= wish.readBefore);
  const fresh = settled.filter((candidate) => candidate.again === "no");
  const chosen = fewestRead(fresh, wish);
  const rest = randomOrder(
    fresh.filter((candidate) => chosen.has(candidate.fundamentalId)),
    chance,
  );
  const [fundamentals, students, sessions] = [new Tally(), new Tally(), new Tally()];
  const rankOf = (candidate: RereadCandidate): readonly number[] => [
    fundamentals.of(candidate.fundamentalId) + (wish.pairs.get(candidate.fundamentalId) ?? 0),
    students.of(candidate.studentId),
    sessions.of(candidate.sessionId),
  ];
  const items: RereadCandidate[] = [];
  while (items.length < wish.count && rest.length > 0) {
    const [next] = rest.splice(leastOf(rest.map(rankOf)), 1) as [RereadCandidate];
    items.push(next);
    fundamentals.add(next.fundamentalId);
    students.add(next.studentId);
    sessions.add(next.sessionId);
  }
  return {
    items: randomOrder(items, chance),
    eligible: fresh.length,
    noReference: candidates.length - found.length,
    tooFresh: found.length - settled.length,
    again: settled.length - fresh.length,
  };
}

/** Position of the least rank, the first among equals; ranks are compared entry by entry. */
function leastOf(ranks: readonly (readonly number[])[]): number {
  let least = 0;
  for (let at = 1; at < ranks.length; at++) {
    const [one, other] = [ranks[at] as readonly number[], ranks[least] as readonly number[]];
    const differs = one.findIndex((value, place) => value !== other[place]);
    if (differs >= 0 && (one[differs] as number) < (other[differs] as number)) least = at;
  }
  return least;
}
