import { type Outcome, ok, tooFew } from "./outcome";
import { type MetaChoices, type RandomEffectsMeta, randomEffectsMeta } from "./random-effects-meta";

/**
 * The meta-analysis again without each study in turn, to see whether one of them makes the result.
 *
 * `effects`, `variances`, `choices`: as in `randomEffectsMeta`. Result: one analysis a study left out, in the studies' order.
 * Fewer than three studies: too-few, counting studies. Bad input and assumptions as there.
 *
 * Source: Viechtbauer, W. & Cheung, M.W.-L. (2010), Research Synthesis Methods 1, 112-125.
 */
export function leaveOneOut(
  effects: readonly number[],
  variances: readonly number[],
  choices: MetaChoices,
): Outcome<readonly RandomEffectsMeta[]> {
  const whole = randomEffectsMeta(effects, variances, choices);
  if (whole.kind !== "ok") return tooFew(whole.have, 3);
  if (effects.length < 3) return tooFew(effects.length, 3);
  return ok(
    effects.map((_, index) => {
      const rest = randomEffectsMeta(effects.toSpliced(index, 1), variances.toSpliced(index, 1), choices);
      if (rest.kind !== "ok") throw new RangeError(`two studies or more must remain, got ${rest.have}`);
      return rest.value;
    }),
  );
}
