import { logSum } from "./log-sum";
import { type Outcome, ok, tooFew } from "./outcome";
import { requireFinite } from "./require-finite";
import { requireProbability } from "./require-probability";
import { type SegmentBelief, segmentEvidence } from "./segment-evidence";

/** Belief over every way to cut a list into stretches; chances are 0 to 1. */
export interface SegmentationPosterior {
  /** Natural log of the density of the whole list. */
  readonly logEvidence: number;
  /** Entry i: chance that a new stretch starts at index i + 1; one shorter than the list. */
  readonly changeAfter: readonly number[];
  /** Entry k: chance of exactly k changes; as long as the list. */
  readonly changes: readonly number[];
  /** Entry r: chance that the last stretch holds r + 1 values; as long as the list. */
  readonly lastLength: readonly number[];
  /** The likeliest cut as the first index of each stretch but the first, and its chance. */
  readonly likeliest: { readonly starts: readonly number[]; readonly chance: number };
}

/**
 * Posterior over all 2^(n-1) ways to cut a list into stretches, each with a level (and spread) of its own.
 *
 * `values`: in order, one unit; `changeChance`: chance of a change at each gap, independently; `belief`: of each stretch,
 * in the unit. Exact: sums over every cut are gathered forwards and backwards instead of being written out. No value:
 * too-few, counting values. Bad input: NaN, infinity, a chance outside 0 to 1 or a belief that `segmentEvidence` refuses throws a
 * RangeError. Assumes independent normal values in a stretch. Time grows with the cube of the length.
 *
 * Source: Barry, D. & Hartigan, J.A. (1992), Annals of Statistics 20, 260-279; Fearnhead, P. (2006), Statistics and
 * Computing 16, 203-213.
 */
export function segmentationPosterior(
  values: readonly number[],
  changeChance: number,
  belief: SegmentBelief,
): Outcome<SegmentationPosterior> {
  requireFinite(values, "values");
  requireProbability(changeChance, "changeChance");
  const count = values.length;
  if (count === 0) return tooFew(0, 1);
  const change = Math.log(changeChance);
  const stay = Math.log1p(-changeChance);
  const places = Array.from({ length: count + 1 }, (_, i) => i);
  // A stretch carries its inner gaps; a cut in front of a later stretch carries one change.
  const stretch = places.map((a) =>
    places.map((b) => (b > a ? segmentEvidence(values.slice(a, b), belief) + (b - a - 1) * stay : 0)),
  );
  const piece = (a: number, b: number) => (stretch[a] as number[])[b] as number;

  const backward = new Array<number>(count + 1).fill(0);
  for (let a = count - 1; a >= 0; a--) {
    const later = places.slice(a + 1, count).map((b) => piece(a, b) + change + (backward[b] as number));
    backward[a] = logSum([piece(a, count), ...later]);
  }
  // byChanges[k][b]: values before b, cut into k + 1 stretches; best keeps the likeliest of them.
  const byChanges: number[][] = [places.map((b) => (b > 0 ? piece(0, b) : Number.NEGATIVE_INFINITY))];
  const best: { score: number; starts: readonly number[] }[] = places.map((b) => ({ score: piece(0, b), starts: [] }));
  for (let b = 2; b <= count; b++) {
    for (let a = 1; a < b; a++) {
      const before = best[a] as { score: number; starts: readonly number[] };
      const score = before.score + change + piece(a, b);
      if (score > (best[b] as { score: number }).score) best[b] = { score, starts: [...before.starts, a] };
    }
  }
  for (let k = 1; k < count; k++) {
    const fewer = byChanges[k - 1] as number[];
    byChanges.push(
      places.map((b) =>
        b <= k
          ? Number.NEGATIVE_INFINITY
          : logSum(places.slice(k, b).map((a) => (fewer[a] as number) + change + piece(a, b))),
      ),
    );
  }
  const forward = places.map((b) => (b === 0 ? 0 : logSum(byChanges.map((row) => row[b] as number))));

  const logEvidence = backward[0] as number;
  const chance = (log: number) => Math.exp(log - logEvidence);
  const winner = best[count] as { score: number; starts: readonly number[] };
  return ok({
    logEvidence,
    changeAfter: places.slice(1, count).map((b) => chance((forward[b] as number) + change + (backward[b] as number))),
    changes: byChanges.map((row) => chance(row[count] as number)),
    lastLength: places.slice(1).map((length) => {
      const start = count - length;
      return chance(piece(start, count) + (start === 0 ? 0 : (forward[start] as number) + change));
    }),
    likeliest: { starts: winner.starts, chance: chance(winner.score) },
  });
}
