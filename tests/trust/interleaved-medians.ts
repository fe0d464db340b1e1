/** Rounds that are thrown away: the first ones compile. */
const WARM = 20;

/**
 * How long each of some things takes, each once a round and in another order each time, so that what else the machine does falls
 * on all of them alike: medians in milliseconds. Where a machine that does much besides tears them apart it is measured anew, up
 * to three times; what really takes longer takes longer each time.
 *
 * @param rounds those that count
 * @param now what is looked at before and after, in milliseconds: the clock, or where all of it happens in this process the
 * processor's time, into which nothing else comes
 * @param most the largest ratio of two medians that ends it at once
 */
export async function interleavedMedians(
  cases: Readonly<Record<string, () => Promise<unknown>>>,
  rounds: number,
  most: number,
  now: () => number = () => performance.now(),
): Promise<{ readonly medians: Readonly<Record<string, number>>; readonly ratio: number }> {
  let best: Awaited<ReturnType<typeof interleavedMedians>> | null = null;
  for (let tries = 0; tries < 3 && (best === null || best.ratio >= most); tries++) {
    const found = await once(Object.entries(cases), rounds, now);
    if (best === null || found.ratio < best.ratio) best = found;
  }
  if (best === null) throw new Error("nothing was measured");
  return best;
}

async function once(cases: readonly (readonly [string, () => Promise<unknown>])[], rounds: number, now: () => number) {
  const took = new Map<string, number[]>(cases.map(([name]) => [name, []]));
  for (let round = 0; round < WARM + rounds; round++)
    for (let at = 0; at < cases.length; at++) {
      const [name, ask] = cases[(at + round) % cases.length] ?? ["", async () => {}];
      const start = now();
      await ask();
      if (round >= WARM) took.get(name)?.push(now() - start);
    }
  const medians = Object.fromEntries(
    [...took].map(([name, times]) => [name, times.sort((a, b) => a - b)[times.length >> 1] ?? 0]),
  );
  const all = Object.values(medians);
  return { medians, ratio: Math.max(...all) / Math.min(...all) };
}

/** Medians as one line. */
export function sayMedians(medians: Readonly<Record<string, number>>): string {
  return Object.entries(medians)
    .map(([name, median]) => `${name} ${median.toFixed(2)}`)
    .join(", ");
}
