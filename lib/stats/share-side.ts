/** Log chance of some groups, and the belief about their share. */
export interface ShareSide {
  readonly log: number;
  /** One cell each, ascending in the share; they sum to 1. */
  readonly shares: Float64Array;
}

/** A cell so far below the best one, in logs, adds nothing that a double keeps. */
const NOTHING = 45;

/**
 * What groups say together of the share behind them, from the sums of their logs.
 *
 * `logs`: of each cell of a `shareGrid`, the log of its mass plus the log chances of the groups, ascending in the share; at
 * least one above minus infinity. Result: the log of their summed chance, and the belief about the share.
 * Bad input: no cell above minus infinity, or NaN, throws a RangeError. In plain loops: this is where the time goes.
 *
 * Source: Bayes' rule on a grid; the largest log is taken out first, as in `logSum`.
 */
export function shareSide(logs: Float64Array): ShareSide {
  let largest = Number.NEGATIVE_INFINITY;
  for (const log of logs) if (log > largest) largest = log;
  const shares = new Float64Array(logs.length);
  let total = 0;
  for (let j = 0; j < logs.length; j++) {
    const below = largest - (logs[j] as number);
    const part = below > NOTHING ? 0 : Math.exp(-below);
    shares[j] = part;
    total += part;
  }
  if (!(total > 0)) throw new RangeError(`a belief needs weight, got ${total}`);
  for (let j = 0; j < shares.length; j++) shares[j] = (shares[j] as number) / total;
  return { log: largest + Math.log(total), shares };
}
