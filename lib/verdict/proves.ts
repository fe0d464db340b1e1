import type { Direction } from "@/lib/domain/track-verdict";
import { evidence } from "@/lib/stats/evidence";
import type { NoiseModel } from "@/lib/stats/noise-model";
import type { Series } from "@/lib/stats/series";
import { limitAt } from "./limit-at";
import type { Policy } from "./policy";
import { provedDirection } from "./proved-direction";
import { heldBefore } from "./quick-look";

/**
 * Whether a change of one direction stands proved at the last look of a series, as the looks say it: by that look, or
 * by an earlier one and held since.
 *
 * @param series nothing is proved among its first `before` groups
 * @param before positions of looks from here on are looked at
 */
export function proves(
  series: Series,
  before: number,
  noise: NoiseModel,
  direction: Direction,
  policy: Policy,
): boolean {
  for (let look = series.groups.length; look > before; look--) {
    const until = { ...series, groups: series.groups.slice(0, look) };
    const found = evidence(until, noise);
    if (found.kind !== "ok") return false;
    const { logBayesFactor, directionUp } = found.value;
    const now = { evidence: found.value, limit: limitAt(look, policy) };
    if (provedDirection(now, () => heldBefore(until, noise, policy), policy) === direction) return true;
    const share = direction === "up" ? directionUp : 1 - directionUp;
    if (share <= 0.5 || logBayesFactor < policy.holdLimit) return false;
  }
  return false;
}
