/**
 * Chances of each value of Kendall's S (concordant less discordant pairs) when every order is equally likely.
 *
 * `tieSizes`: for each different value, how many times it occurs, in any order, whole numbers from 1; all ones
 * when nothing is tied. The other variable is untied. Result: a list over the number of discordant pairs
 * d = 0, 1, ...; S is `pairs` - 2 d, where `pairs` counts pairs that aren't tied. The chances sum to 1 and are good to
 * about 13 digits. Bad input: an empty list, or a size that isn't whole and above 0, throws a RangeError.
 *
 * Source: Kendall, M.G. (1970). Rank Correlation Methods, ch. 5; with ties the counts are those of inversions of
 * a multiset (MacMahon 1916), built by adding one tied group at a time (Mann & Whitney 1947).
 */
export function kendallNull(tieSizes: readonly number[]): {
  readonly pairs: number;
  readonly chances: readonly number[];
} {
  if (tieSizes.length === 0) throw new RangeError("tieSizes must hold at least one size, got none");
  let before = 0;
  let pairs = 0;
  let chances: number[] = [1];
  for (const size of tieSizes) {
    if (!Number.isInteger(size) || size < 1) throw new RangeError(`a tie size must be whole, 1 or more, got ${size}`);
    const group = rankSumNull(before, size);
    const next = new Array<number>(chances.length + group.length - 1).fill(0);
    chances.forEach((a, i) => {
      group.forEach((b, j) => {
        next[i + j] = (next[i + j] as number) + a * b;
      });
    });
    chances = next;
    pairs += before * size;
    before += size;
  }
  return { pairs, chances };
}

/** Chances of u = 0 ... m n discordant pairs between m earlier values and n alike ones, every arrangement equally likely. */
function rankSumNull(m: number, n: number): number[] {
  let row: number[][] = Array.from({ length: n + 1 }, () => [1]);
  for (let a = 1; a <= m; a++) {
    const next: number[][] = [[1]];
    for (let b = 1; b <= n; b++) {
      const lastOfFirst = row[b] as number[];
      const lastOfSecond = next[b - 1] as number[];
      next.push(
        Array.from({ length: a * b + 1 }, (_, u) => {
          const first = u >= b ? (lastOfFirst[u - b] ?? 0) : 0;
          return (a * first + b * (lastOfSecond[u] ?? 0)) / (a + b);
        }),
      );
    }
    row = next;
  }
  return row[n] as number[];
}
