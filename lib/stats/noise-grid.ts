import type { NoiseCell } from "./noise-model";

/** The points over which belief in noise is spread before anything is learned. */
export interface NoiseGrid {
  /** Day sds, in multiples of the pool's scale; believed alike. */
  readonly multiples: readonly number[];
  /** Correlations of the day effect; believed alike. */
  readonly correlations: readonly number[];
  /** Ways in which a correlation above 0 may fade; they share its belief evenly. */
  readonly fades: readonly ("groups" | "days")[];
  /** Persistences of the shared error, with their shares of belief, which sum to 1. */
  readonly persistences: readonly { readonly value: number; readonly share: number }[];
  readonly spread: "whole" | "local";
}

/** The grid in use. */
export const NOISE_GRID: NoiseGrid = {
  multiples: [0.3, 0.8, 1.3, 1.9, 2.8, 4.5],
  correlations: [0, 0.15, 0.3, 0.45],
  fades: ["groups", "days"],
  persistences: [
    { value: 0, share: 0.7 },
    { value: 0.8, share: 0.3 },
  ],
  spread: "local",
};

/** The cells of a grid with their shares of belief; day sds as multiples. */
export function priorCells(plan: NoiseGrid): NoiseCell[] {
  const { multiples, correlations, fades, persistences } = plan;
  return multiples.flatMap((daySd) =>
    correlations.flatMap((correlation) =>
      (correlation > 0 ? fades : (["groups"] as const)).flatMap((fade) =>
        persistences.map(({ value, share }) => ({
          daySd,
          correlation,
          ...(fade === "days" ? { fadesBy: fade } : {}),
          ...(value > 0 ? { errorPersistence: value } : {}),
          weight: share / (multiples.length * correlations.length * (correlation > 0 ? fades.length : 1)),
        })),
      ),
    ),
  );
}
