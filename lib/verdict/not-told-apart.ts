import type { CalendarDay } from "@/lib/domain/calendar-day";
import type { NotToldApart } from "@/lib/domain/track-verdict";
import type { NoiseModel } from "@/lib/stats/noise-model";
import { posterior } from "@/lib/stats/posterior";
import type { ReplicateGroup, Series } from "@/lib/stats/series";
import { limitAt } from "./limit-at";
import type { Policy } from "./policy";
import { provedDirection } from "./proved-direction";
import { heldBefore } from "./quick-look";

/** What two sessions may share, and the series as if it made no difference. */
const SHARED = {
  reader: {
    label: (group: ReplicateGroup) => group.offsetLabel,
    without: (group: ReplicateGroup): ReplicateGroup => ({ ...group, offsetLabel: null }),
  },
  placement: {
    label: (group: ReplicateGroup) => group.sharedErrorLabel,
    without: (group: ReplicateGroup): ReplicateGroup => ({ ...group, sharedErrorLabel: null, sharedErrorSd: 0 }),
  },
} as const;

/**
 * What a move that isn't proved can't be told apart from: a reader or a place of the camera that changed with it.
 *
 * The track is judged once more as if readers, or places, made no difference. If a change is proved then, and a new one
 * began within the stretch in which it happened, the two can't be told apart.
 *
 * @param series the sessions up to the look; under four used ones nothing is proved
 * @param dates one a group of the series, same order
 * @returns the first kind that explains the move, the reader first; null: none does
 */
export function notToldApart(
  series: Series,
  dates: readonly CalendarDay[],
  noise: NoiseModel,
  policy: Policy,
): NotToldApart | null {
  for (const from of ["reader", "placement"] as const) {
    const began = beginnings(series, SHARED[from].label);
    if (began.length === 0) continue;
    const without: Series = { ...series, groups: series.groups.map(SHARED[from].without) };
    const found = posterior(without, noise);
    if (found.kind !== "ok") continue;
    const now = { evidence: found.value, limit: limitAt(without.groups.length, policy) };
    const direction = provedDirection(now, () => heldBefore(without, noise, policy), policy);
    if (direction === null) continue;
    const first = found.value.set95.length > 0 ? Math.min(...found.value.set95) : found.value.rampStart10;
    const last = found.value.set95.length > 0 ? Math.max(...found.value.set95) : without.groups.length - 1;
    const at = began.find((index) => index >= first && index <= last);
    if (at !== undefined) return { from, direction, on: dates[at] as CalendarDay };
  }
  return null;
}

/** Positions of used groups whose label no earlier used group has. */
function beginnings(series: Series, label: (group: ReplicateGroup) => string | null): readonly number[] {
  const seen = new Set<string | null>();
  return series.groups.flatMap((group, index) => {
    if (!group.used) return [];
    const anew = seen.size > 0 && !seen.has(label(group));
    seen.add(label(group));
    return anew ? [index] : [];
  });
}
