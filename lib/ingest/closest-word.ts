/** Letters to insert, drop, change or swap with a neighbour to get from one word to the other; `limit + 1` when more. */
export function editDistance(a: string, b: string, limit: number): number {
  if (Math.abs(a.length - b.length) > limit) return limit + 1;
  let before: number[] = [];
  let last = Array.from({ length: b.length + 1 }, (_, at) => at);
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    for (let j = 1; j <= b.length; j++) {
      const same = a[i - 1] === b[j - 1];
      let cost = Math.min((last[j] ?? 0) + 1, (row[j - 1] ?? 0) + 1, (last[j - 1] ?? 0) + (same ? 0 : 1));
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1])
        cost = Math.min(cost, (before[j - 2] ?? 0) + 1);
      row.push(cost);
    }
    if (Math.min(...row) > limit) return limit + 1;
    [before, last] = [last, row];
  }
  return last[b.length] ?? limit + 1;
}

/**
 * The candidate whose word is nearest to a text, when near enough to be meant: one letter in four, two at most.
 *
 * @param candidates pairs of a word (already a key) and what it stands for
 */
export function closestWord<T>(key: string, candidates: Iterable<readonly [string, T]>): T | null {
  if (key.length > 60) return null;
  const limit = Math.min(2, Math.max(1, Math.floor(key.length / 4)));
  let best: T | null = null;
  let least = limit + 1;
  for (const [word, meant] of candidates) {
    const distance = editDistance(key, word, Math.min(limit, least));
    if (distance < least) [best, least] = [meant, distance];
  }
  return best;
}
