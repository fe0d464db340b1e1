import type { VarianceEstimator } from "@/lib/stats/between-study-variance";
import { readReference } from "@/tests/reference/read-reference";

/** What R metafor 3.8.1 says of one estimator; I2 in per cent. */
export interface MetaforResult {
  readonly est: number;
  readonly se: number;
  readonly ci: [number, number];
  readonly p: number;
  readonly tau2: number;
  readonly I2: number;
  readonly Q: number;
  readonly Qp: number;
  readonly pi_normal: [number, number];
  readonly hk_se: number;
  readonly hk_p: number;
  readonly hk_ci: [number, number];
  readonly hk_pi: [number, number];
  readonly pi_higgins_t_kminus2?: [number, number];
}

export interface MetaforMore {
  readonly loo_est: number[];
  readonly loo_ci_lb: number[];
  readonly loo_ci_ub: number[];
  readonly loo_tau2: number[];
  readonly loo_I2: number[];
}

/** Every set of studies with every estimator that the project knows. */
export const METAFOR = readReference<
  { yi: number[]; vi: number[] },
  Record<string, MetaforResult> & { more?: MetaforMore }
>("08_meta_analysis").flatMap((one) =>
  (
    [
      ["moments", "DL"],
      ["paule-mandel", "PM"],
      ["restricted-likelihood", "REML"],
    ] as const satisfies readonly (readonly [VarianceEstimator, string])[]
  ).map(([estimator, key]) => ({
    id: one.id,
    estimator,
    effects: one.input.yi,
    variances: one.input.vi,
    expected: one.expected[key] as MetaforResult,
    more: one.expected.more,
    tolerance: one.tolerance,
  })),
);

/** Studies drawn about a mean: their true effects spread by an sd, their errors of the given variances. */
export function drawnStudies(
  mean: number,
  betweenSd: number,
  variances: readonly number[],
  normal: () => number,
): number[] {
  return variances.map((variance) => mean + betweenSd * normal() + Math.sqrt(variance) * normal());
}
