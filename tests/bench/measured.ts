/** One figure of the bench: what was done, how long one of it took, and how that compares. */
export interface Measured {
  readonly what: string;
  readonly times: number;
  /** Milliseconds of one, median and slowest. */
  readonly median: number;
  readonly slowest: number;
  /** A second figure in words, such as a rate; empty: none. */
  readonly also: string;
  /** Milliseconds that it may take; null: none is set. */
  readonly bound: number | null;
}

function summary(what: string, times: readonly number[], also: string, bound: number | null): Measured {
  const sorted = [...times].sort((a, b) => a - b);
  return {
    what,
    times: times.length,
    median: sorted[Math.floor(sorted.length / 2)] ?? Number.NaN,
    slowest: sorted.at(-1) ?? Number.NaN,
    also,
    bound,
  };
}

/** Does something several times after two unmeasured rounds. */
export function measure(what: string, times: number, bound: number | null, work: (round: number) => void): Measured {
  const taken: number[] = [];
  for (let round = -2; round < times; round++) {
    const from = performance.now();
    work(round + 2);
    if (round >= 0) taken.push(performance.now() - from);
  }
  return summary(what, taken, "", bound);
}

/** As `measure`, for work that ends later; `unmeasured` rounds go first. */
export async function measureLater(
  what: string,
  { times, unmeasured }: { readonly times: number; readonly unmeasured: number },
  also: (medianMs: number) => string,
  work: (round: number) => Promise<unknown>,
): Promise<Measured> {
  const taken: number[] = [];
  for (let round = 0; round < times + unmeasured; round++) {
    const from = performance.now();
    await work(round);
    if (round >= unmeasured) taken.push(performance.now() - from);
  }
  const plain = summary(what, taken, "", null);
  return { ...plain, also: also(plain.median) };
}

/** A fixed piece of arithmetic, so that runs on different machines can be compared: four million exponentials and roots. */
export function yardstick(): Measured {
  let sum = 0;
  return measure("yardstick: 4 million exp and sqrt", 9, null, () => {
    for (let i = 0; i < 4_000_000; i++) sum += Math.exp(-Math.sqrt(i & 1023));
    if (sum < 0) throw new RangeError("a sum of positive numbers");
  });
}

/** The figures as a table; `x yardstick` is each median over that of the first line. */
export function saidFigures(figures: readonly Measured[]): string {
  const unit = figures[0]?.median ?? 1;
  const rows = figures.map((figure) => [
    figure.what,
    String(figure.times),
    figure.median.toFixed(figure.median < 10 ? 2 : 0),
    figure.slowest.toFixed(figure.slowest < 10 ? 2 : 0),
    (figure.median / unit).toFixed(3),
    figure.bound === null ? "" : `${figure.bound} (${figure.median <= figure.bound ? "kept" : "BROKEN"})`,
    figure.also,
  ]);
  const head = ["what", "times", "median ms", "slowest ms", "x yardstick", "bound ms", "also"];
  const widths = head.map((title, c) => Math.max(title.length, ...rows.map((row) => (row[c] as string).length)));
  const line = (cells: readonly string[]): string =>
    cells
      .map((cell, c) => (c === 0 || c === 6 ? cell.padEnd(widths[c] as number) : cell.padStart(widths[c] as number)))
      .join("  ")
      .trimEnd();
  return [line(head), ...rows.map(line)].join("\n");
}
