/** How strong an unmeasured common cause would have to be to explain a difference away. */
export interface HiddenReason {
  /** Risk ratio with each of the two sides that moves the estimate to none; 1 or more. */
  readonly estimate: number;
  /** The same for the end of the 95 of 100 interval that is nearer to none; 1 where the interval holds it. */
  readonly interval: number;
}

/** From standardised differences to risk ratios: VanderWeele and Ding 2017, after Chinn 2000. */
const PER_SD = 0.91;

/**
 * The E-value of a difference: how strongly an unmeasured cause would have to go with both the group and the outcome, on the
 * scale of risk ratios, so that nothing of the difference remained.
 *
 * `difference`: its estimate and the ends of its 95 of 100 interval, in the unit; `sd`: of the outcome, in the unit, above
 * 0. Bad input: a number that isn't finite, ends that don't enclose the estimate, or an sd that isn't above 0 throws a
 * RangeError. Assumes an outcome near enough to normal for a standardised difference to be read as a risk ratio.
 *
 * Source: VanderWeele, T.J. & Ding, P. (2017), Annals of Internal Medicine 167, 268-274.
 */
export function hiddenReason(
  difference: { readonly estimate: number; readonly low95: number; readonly high95: number },
  sd: number,
): HiddenReason {
  const { estimate, low95, high95 } = difference;
  if (!(low95 <= estimate && estimate <= high95 && Number.isFinite(low95) && Number.isFinite(high95)))
    throw new RangeError(`an interval must enclose its estimate: ${low95} ${estimate} ${high95}`);
  if (!(Number.isFinite(sd) && sd > 0)) throw new RangeError(`an sd must be above 0: ${sd}`);
  const nearer = estimate >= 0 ? Math.max(0, low95) : Math.max(0, -high95);
  return { estimate: strength(Math.abs(estimate) / sd), interval: strength(nearer / sd) };
}

function strength(standardised: number): number {
  const ratio = Math.exp(PER_SD * standardised);
  return ratio + Math.sqrt(ratio * (ratio - 1));
}
