import { hiddenReason } from "@/lib/stats/hidden-reason";
import type { DrillSensitivity } from "./comparison";
import { type Compared, type DrillEffect, drillEffects, SCORE } from "./drill-rows";
import type { Episode } from "./episode";

/**
 * How much each drill's effect hangs on one coach, one student, how long the run is taken to be, on age and hand, and how
 * strong a reason that isn't on file would have to be to undo it.
 */
export function drillSensitivity(
  compared: Compared,
  effects: ReadonlyMap<string, DrillEffect>,
): readonly DrillSensitivity[] {
  const coaches = [...new Set([...compared.reference, ...compared.onDrills].map((episode) => episode.coach))];
  const leftOut = coaches.length < 2 ? [] : coaches.toSorted().map((coach) => effectsWithout(compared, coach));
  const shorter = drillEffects(compared, { ...SCORE, run: "shorter" });
  const extra = ageAndHand([...compared.reference, ...compared.onDrills]);
  const adjusted = extra === null ? null : drillEffects(compared, { ...SCORE, extra });
  return [...effects].map(([drill, effect]) => ({
    drill,
    coachLeftOut: rangeOf(leftOut.flatMap((found) => found.get(drill)?.estimate ?? [])),
    studentLeftOut: rangeOf(effect.influence.map((fall) => effect.estimate - fall)),
    otherRun: shorter.get(drill)?.estimate ?? null,
    withAgeAndHand: adjusted?.get(drill)?.estimate ?? null,
    hiddenReason: effect.residualSd > 0 ? hiddenReason(effect, effect.residualSd) : null,
  }));
}

function effectsWithout(compared: Compared, coach: string): ReadonlyMap<string, DrillEffect> {
  const others = (of: readonly Episode[]) => of.filter((episode) => episode.coach !== coach);
  const reference = others(compared.reference);
  // Without anybody left to compare with, the others would be measured against something else.
  if (compared.reference.length > 0 && reference.length === 0) return new Map();
  return drillEffects({ ...compared, reference, onDrills: others(compared.onDrills) }, SCORE);
}

function rangeOf(values: readonly number[]): { readonly low: number; readonly high: number } | null {
  return values.length === 0 ? null : { low: Math.min(...values), high: Math.max(...values) };
}

/** Columns of age and hand, a student without either in the middle and marked so; null: nobody's is on file. */
export function ageAndHand(
  episodes: readonly Episode[],
): ((episode: Episode) => Readonly<Record<string, number>>) | null {
  const ages = episodes.flatMap(({ ageYears }) => ageYears ?? []);
  const hands = episodes.flatMap(({ hand }) => hand ?? []);
  if (ages.length === 0 && hands.length === 0) return null;
  const age = ages.reduce((sum, value) => sum + value, 0) / Math.max(1, ages.length);
  const left = hands.filter((hand) => hand === "left").length / Math.max(1, hands.length);
  return ({ ageYears, hand }) => ({
    ageYears: (ageYears ?? age) - age,
    ageUnknown: ageYears === null ? 1 : 0,
    leftHanded: (hand === null ? left : hand === "left" ? 1 : 0) - left,
    handUnknown: hand === null ? 1 : 0,
  });
}
