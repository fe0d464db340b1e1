import { mannKendall } from "./mann-kendall";
import { normalUpperTail } from "./normal-distribution";
import { type Outcome, ok } from "./outcome";

/** A Mann-Kendall test whose variance allows for serial correlation. */
export interface SerialTrend {
  readonly s: number;
  /** Values over values that would say as much if they were independent; above 1 when neighbours are alike. */
  readonly inflation: number;
  /** Variance of S times the inflation. */
  readonly variance: number;
  readonly z: number;
  /** Two-sided, from z. */
  readonly p: number;
}

/** The test, or that the correction's variance isn't above 0, which leaves the method undefined. */
export type SerialTrendOutcome = Outcome<SerialTrend> | { readonly kind: "no-variance"; readonly inflation: number };

/**
 * Mann-Kendall test of an evenly spaced series with its variance multiplied by `inflation`.
 *
 * `values`: in the order taken, evenly spaced, one unit, three or more (else too-few, counting values); `inflation`: no unit. An
 * inflation of 0 or less: no-variance. Bad input: NaN or infinity throws a RangeError. Assumes many values: z is drawn in by one
 * (continuity) and held against the normal.
 *
 * Source: Hamed, K.H. & Rao, A.R. (1998), Journal of Hydrology 204, 182-196.
 */
export function serialTrend(values: readonly number[], inflation: number): SerialTrendOutcome {
  if (!Number.isFinite(inflation)) throw new RangeError(`inflation must be finite, got ${inflation}`);
  const plain = mannKendall(
    values.map((_, i) => i),
    values,
  );
  if (plain.kind !== "ok") return plain;
  if (inflation <= 0) return { kind: "no-variance", inflation };
  const z = plain.value.z / Math.sqrt(inflation);
  return ok({
    s: plain.value.s,
    inflation,
    variance: plain.value.variance * inflation,
    z,
    p: Math.min(1, 2 * normalUpperTail(Math.abs(z))),
  });
}
