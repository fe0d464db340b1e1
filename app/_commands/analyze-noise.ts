import { parseNoiseLine } from "@/lib/ingest/parse-noise-line";
import { parseTrackLine } from "@/lib/ingest/parse-track-line";
import type { NoiseModel } from "@/lib/stats/noise-model";
import type { Series } from "@/lib/stats/series";
import { judgedSeries } from "@/lib/verdict/judged-series";
import { learnNoise, noiseAlways, noiseByName, teaches } from "@/lib/verdict/noise";
import type { Policy } from "@/lib/verdict/policy";
import type { NoiseFor } from "@/lib/verdict/track-looks";
import type { Words } from "@/lib/words/catalogue";
import { readLines } from "./read-lines";

/** The noise levels of a pool; tracks that name none share one. */
export type NoiseOfPool = (pool: string | undefined) => NoiseFor;

/** A line of a noise file that can't be used. */
export class NoiseFileError extends Error {}

/** Noise levels learned from the tracks of a file, pool by pool. Lines that can't be read teach nothing; they are named where they are judged. */
export async function learnFromFile(file: string, policy: Policy): Promise<NoiseOfPool> {
  const pools = new Map<string, Series[]>();
  for await (const line of readLines(file)) {
    const outcome = line.trim() === "" ? null : parseTrackLine(line);
    if (outcome?.kind !== "ok") continue;
    const { series } = judgedSeries(outcome.value, policy);
    const pool = outcome.value.pool ?? "";
    if (teaches(series, policy)) pools.set(pool, [...(pools.get(pool) ?? []), series]);
  }
  const models = new Map([...pools].map(([pool, series]) => [pool, noiseAlways(learnNoise(series, policy))]));
  const start = noiseByName([]);
  // What the noise is learned from counts, not what a session names: here no file of models stands beside the tracks.
  return (pool) => models.get(pool ?? "") ?? (() => start(undefined));
}

/** No noise levels but the starting ones. */
export function noNoise(): NoiseOfPool {
  const start = noiseByName([]);
  return () => () => start(undefined);
}

/** The models of a noise file, by pool and name. */
export async function readNoiseFile(file: string, words: Words): Promise<NoiseOfPool> {
  const pools = new Map<string, NoiseModel[]>();
  let number = 0;
  for await (const line of readLines(file)) {
    number += 1;
    if (line.trim() === "") continue;
    const outcome = parseNoiseLine(line);
    if (outcome.kind === "issue") {
      const message = words.say(`analyze.issue.${outcome.issue.code}`, { value: outcome.issue.value });
      throw new NoiseFileError(
        words.say("analyze.usage.noise-file", {
          file,
          line: number,
          message: `${outcome.issue.field} ${message}`.trim(),
        }),
      );
    }
    const { pool, model } = outcome.value;
    pools.set(pool ?? "", [...(pools.get(pool ?? "") ?? []), model]);
  }
  const byPool = new Map([...pools].map(([pool, models]) => [pool, noiseByName(models)]));
  return (pool) => byPool.get(pool ?? "") ?? noiseByName([]);
}
