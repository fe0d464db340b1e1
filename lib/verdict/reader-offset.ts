import type { RereadPair } from "@/lib/domain/reread";
import { type LimitsOfAgreement, limitsOfAgreement } from "@/lib/stats/limits-of-agreement";
import { type Outcome, ok, tooFew } from "@/lib/stats/outcome";
import { shrunkenVariance } from "@/lib/stats/shrunken-variance";
import { READER_ERROR_THRESHOLDS as T } from "./reader-error-thresholds";

/** Two readers on the same swings. */
export interface ComparedReaders {
  /** In the order of the names; differences are the first one's values less the second one's. */
  readonly readers: readonly [string, string];
  readonly swings: number;
  readonly agreement: Outcome<LimitsOfAgreement>;
}

/** How far readers differ from one another, in the unit. */
export interface ReaderOffset {
  /** By the two names. */
  readonly compared: readonly ComparedReaders[];
  /** Sd of one reader's offset about all readers; too-few counts the swings of the two who share most. */
  readonly offsetSd: Outcome<number>;
}

function compare(readers: readonly [string, string], pairs: readonly RereadPair[]): ComparedReaders {
  const readBy = (pair: RereadPair, name: string): number => (pair.reader === name ? pair.again : pair.first);
  const [one, other] = readers;
  return {
    readers,
    swings: pairs.length,
    agreement: limitsOfAgreement(
      pairs.map((pair) => readBy(pair, one)),
      pairs.map((pair) => readBy(pair, other)),
      0.95,
      T.confidence.value,
    ),
  };
}

/**
 * Twice the offset's variance is what two readers' bias squares to, less the square of its own error; differences that are
 * all one have a bias without error.
 */
function offsetVariance({ agreement }: ComparedReaders, pairs: readonly RereadPair[]): number {
  if (agreement.kind !== "ok") return ((pairs[0]?.again ?? 0) - (pairs[0]?.first ?? 0)) ** 2 / 2;
  const { value, standardError } = agreement.value.bias;
  return (value ** 2 - standardError ** 2) / 2;
}

/**
 * Bias and limits of agreement of every two readers, and the sd of readers' offsets.
 *
 * Method of moments: readers' offsets o have mean 0 and one variance, so that E(bias²) = 2 var(o) + the bias's own variance.
 * The mean over the pairs of readers with enough shared swings, floored at 0, counts with as many degrees of freedom as there
 * are readers among them less one, and is drawn toward the customary variance, which therefore never quite goes: two readers
 * who happen to agree say little about a third.
 *
 * @param pairs of one fundamental, read by two different readers each, any order
 * @param customary sd of offsets until readers have been compared, in the unit; above 0
 *
 * Sources: Bland and Altman 1986 (limits of agreement); Searle, Casella and McCulloch 1992 (moments); Smyth 2004 (shrinkage).
 */
export function readerOffset(pairs: readonly RereadPair[], customary: number): ReaderOffset {
  const groups = new Map<string, { readonly readers: readonly [string, string]; readonly pairs: RereadPair[] }>();
  for (const pair of pairs) {
    const readers = [pair.firstReader, pair.reader].sort() as [string, string];
    const key = JSON.stringify(readers);
    const group = groups.get(key) ?? { readers, pairs: [] };
    groups.set(key, group);
    group.pairs.push(pair);
  }
  const named = [...groups]
    .sort(([one], [other]) => (one < other ? -1 : 1))
    .map(([, group]) => ({ shared: group.pairs, comparison: compare(group.readers, group.pairs) }));
  const compared = named.map(({ comparison }) => comparison);
  const telling = named.filter(({ shared }) => shared.length >= T.sharedNeeded.value);
  if (telling.length === 0) {
    const most = compared.reduce((swings, each) => Math.max(swings, each.swings), 0);
    return { compared, offsetSd: tooFew(most, T.sharedNeeded.value) };
  }
  const degrees = new Set(telling.flatMap(({ comparison }) => comparison.readers)).size - 1;
  const moments = telling.map(({ comparison, shared }) => offsetVariance(comparison, shared));
  const variance = Math.max(0, moments.reduce((sum, moment) => sum + moment, 0) / moments.length);
  return {
    compared,
    offsetSd: ok(
      Math.sqrt(shrunkenVariance({ variance, degrees }, { variance: customary ** 2, degrees: T.offsetWorth.value })),
    ),
  };
}
