/** How many dots may lie side by side over an axis without touching, from large dots to small ones. */
const COLUMNS = [36, 72, 144] as const;

/** Dots above one another at which smaller ones are taken. Own choice: about as high as a chart of a season. */
const MOST_LANES = 16;

/** Dots of a line and how high they stand. */
export interface Stacked<T> {
  readonly dots: readonly (T & { readonly lane: number })[];
  readonly lanes: number;
}

/** Each dot in the lowest lane in which it touches no other, from left to right. */
export function stackDots<T extends { readonly at: number }>(dots: readonly T[], apart: number): Stacked<T> {
  const ends: number[] = [];
  const stacked = dots
    .toSorted((a, b) => a.at - b.at)
    .map((dot) => {
      const free = ends.findIndex((end) => end + apart <= dot.at);
      const lane = free < 0 ? ends.length : free;
      ends[lane] = dot.at;
      return { ...dot, lane };
    });
  return { dots: stacked, lanes: ends.length };
}

/** Some lines of dots over one axis, in the largest dots that keep all of them low. */
export function stackLines<T extends { readonly at: number }>(
  lines: readonly (readonly T[])[],
  { from, to }: { readonly from: number; readonly to: number },
): { readonly columns: number; readonly lines: readonly Stacked<T>[] } {
  const tried = COLUMNS.map((columns) => ({
    columns,
    lines: lines.map((dots) => stackDots(dots, (to - from) / columns)),
  }));
  const found = tried.find((each) => each.lines.every(({ lanes }) => lanes <= MOST_LANES)) ?? tried.at(-1);
  return found ?? { columns: COLUMNS[0], lines: [] };
}
