import type { NoiseCell, NoiseModel } from "@/lib/stats/noise-model";

/** Groups of day sds, and of correlations within each, that a thinned model keeps. */
const DAY_GROUPS = 3;
const CORRELATION_GROUPS = 2;

/** Cuts cells, sorted by what they are to be alike in, into groups of about equal weight. */
function groups(cells: readonly NoiseCell[], count: number): NoiseCell[][] {
  const total = cells.reduce((sum, cell) => sum + cell.weight, 0);
  const cut: NoiseCell[][] = Array.from({ length: count }, () => []);
  let held = 0;
  for (const cell of cells) {
    const place = Math.min(count - 1, Math.floor(((held + cell.weight / 2) / total) * count));
    cut[place]?.push(cell);
    held += cell.weight;
  }
  return cut.filter((group) => group.length > 0);
}

/**
 * A noise model of a few cells that believes much the same: for questions asked many times.
 *
 * Cells are grouped by day sd, then by correlation; each group becomes one cell at its weighted means. Weights add up
 * to 1 as before; the other fields are kept.
 */
export function thinNoise(noise: NoiseModel): NoiseModel {
  const alive = noise.cells.filter((cell) => cell.weight > 0);
  const byDay = groups(
    [...alive].sort((a, b) => a.daySd - b.daySd),
    DAY_GROUPS,
  );
  const cells = byDay.flatMap((group) =>
    groups(
      [...group].sort((a, b) => a.correlation - b.correlation),
      CORRELATION_GROUPS,
    ).map((alike) => {
      const weight = alike.reduce((sum, cell) => sum + cell.weight, 0);
      const mean = (of: (cell: NoiseCell) => number): number =>
        alike.reduce((sum, cell) => sum + cell.weight * of(cell), 0) / weight;
      return { daySd: mean((cell) => cell.daySd), correlation: mean((cell) => cell.correlation), weight };
    }),
  );
  return { ...noise, cells };
}
