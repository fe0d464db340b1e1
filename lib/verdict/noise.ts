import { fitNoiseModel } from "@/lib/stats/fit-noise-model";
import type { NoiseModel } from "@/lib/stats/noise-model";
import type { Series } from "@/lib/stats/series";
import { startNoiseModel } from "@/lib/stats/start-noise-model";
import type { Policy } from "./policy";
import type { NoiseFor } from "./track-looks";

/** Name of the starting noise model, which is learned from nothing. */
export const START_NOISE = "start";

/** Whether a series has enough used groups to teach the noise model of its pool. */
export function teaches(series: Series, policy: Policy): boolean {
  return series.groups.filter((group) => group.used).length >= policy.learnSessions;
}

/**
 * The noise model of one pool, learned from its tracks.
 *
 * @param pool series in one unit, any order; those with too few used groups are left out
 * @returns named by how many tracks it was learned from; with fewer than ten, the starting model
 */
export function learnNoise(pool: readonly Series[], policy: Policy): NoiseModel {
  const usable = pool.filter((series) => teaches(series, policy));
  const learned = fitNoiseModel(usable, `learned-from-${usable.length}`);
  return learned.kind === "start" ? startNoiseModel(START_NOISE) : learned;
}

/**
 * The noise models of one pool by name; without a name the newest, and the starting model where there is none.
 *
 * @param models oldest first; of one name the last counts
 * @throws RangeError on a name that none of them has
 */
export function noiseByName(models: readonly NoiseModel[]): NoiseFor {
  const newest = models.at(-1) ?? startNoiseModel(START_NOISE);
  const byName = new Map(models.map((model) => [model.id, model]));
  return (name) => {
    if (name === undefined) return newest;
    const found = byName.get(name) ?? (name === START_NOISE ? startNoiseModel(START_NOISE) : undefined);
    if (found === undefined) throw new RangeError(`no noise model of that name: ${name}`);
    return found;
  };
}

/** One noise model whatever the name: where noise is learned from the call itself, names are passed over. */
export function noiseAlways(model: NoiseModel): NoiseFor {
  return () => model;
}
