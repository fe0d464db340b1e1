import type { NoiseCell, NoiseModel } from "@/lib/stats/noise-model";

/** Groups of day sds, and of correlations within each, that a thinned model keeps. */
const DAY_GROUPS = 3;
const CORRELATION_GROUPS = 2;

const weightOf = (cells: readonly NoiseCell[]): number => cells.reduce((sum, cell) => sum + cell.weight, 0);

/** Cuts cells, sorted by what they are to be alike in, into groups of about equal weight. */
function groups(cells: readonly NoiseCell[], count: number): NoiseCell[][] {
  const total = weightOf(cells);
  const cut: NoiseCell[][] = Array.from({ length: count }, () => []);
  let held = 0;
  for (const cell of cells) {
    const place = Math.min(count - 1, Math.floor(((held + cell.weight / 2) / total) * count));
    cut[place]?.push(cell);
    held += cell.weight;
  }
  return cut.filter((group) => group.length > 0);
}

/** One cell for cells that are much alike: at their weighted means, fading as most of what is correlated fades. */
function oneCell(alike: readonly NoiseCell[]): NoiseCell {
  const weight = weightOf(alike);
  const mean = (of: (cell: NoiseCell) => number): number =>
    alike.reduce((sum, cell) => sum + cell.weight * of(cell), 0) / weight;
  const correlated = alike.filter((cell) => cell.correlation > 0);
  const byDays = 2 * weightOf(correlated.filter((cell) => cell.fadesBy === "days")) > weightOf(correlated);
  const errorPersistence = mean((cell) => cell.errorPersistence ?? 0);
  return {
    daySd: mean((cell) => cell.daySd),
    correlation: mean((cell) => cell.correlation),
    ...(byDays ? { fadesBy: "days" } : {}),
    ...(errorPersistence > 0 ? { errorPersistence } : {}),
    weight,
  };
}

/**
 * A noise model of a few cells that believes much the same: for questions asked many times.
 *
 * Cells whose shared error persists stay apart from the others; each family is grouped by day sd, then by correlation,
 * and each group becomes one cell at its weighted means. Weights add up to 1 as before; the other fields are kept.
 */
export function thinNoise(noise: NoiseModel): NoiseModel {
  const alive = noise.cells.filter((cell) => cell.weight > 0);
  const families = [
    alive.filter((cell) => (cell.errorPersistence ?? 0) === 0),
    alive.filter((cell) => (cell.errorPersistence ?? 0) > 0),
  ].filter((family) => family.length > 0);
  const cells = families.flatMap((family) =>
    groups(
      [...family].sort((a, b) => a.daySd - b.daySd),
      DAY_GROUPS,
    ).flatMap((group) =>
      groups(
        [...group].sort((a, b) => a.correlation - b.correlation),
        CORRELATION_GROUPS,
      ).map(oneCell),
    ),
  );
  return { ...noise, cells };
}
