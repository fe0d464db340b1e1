import { evidence } from "@/lib/stats/evidence";
import type { Evidence, Posterior } from "@/lib/stats/look";
import type { NoiseModel } from "@/lib/stats/noise-model";
import { type Outcome, ok } from "@/lib/stats/outcome";
import { posterior } from "@/lib/stats/posterior";
import type { Series } from "@/lib/stats/series";
import { type JudgedSeries, stretchAt } from "./judged-series";
import type { Policy } from "./policy";
import { changeBelow, steadyAt, type Worthwhile } from "./quick-look";

/** The noise model of a name among those of the track's pool; no name: the newest. */
export type NoiseFor = (name: string | undefined) => NoiseModel;

/** The engine's answers about stretches of a track, each worked out once and only when asked for. */
export interface TrackLooks {
  /** Noise model in force at the look after session `look`. */
  noise(look: number): NoiseModel;
  /** Evidence of sessions `start` to `look`; null: fewer than four used ones. */
  evidence(start: number, look: number): Evidence | null;
  /** All that is said of sessions `start` to `look`, indices counted from the track's first; null: as above. */
  posterior(start: number, look: number): Posterior | null;
  /** The limit in the unit below which any change of sessions `start` to `look` lies (see `changeBelow`). */
  changeBelow(start: number, look: number, policy: Policy): number | null;
  /** Whether the track is proved to hold at a look (see `steadyAt`). */
  steady(look: number, worthwhile: Worthwhile, policy: Policy): boolean;
}

/**
 * Opens the looks of a track.
 *
 * A look that adds no used session to a stretch repeats the answer of the one before it, as long as the noise model and the
 * reader's error are the same.
 */
export function trackLooks(judged: JudgedSeries, noiseFor: NoiseFor): TrackLooks {
  const { series, sessions, readerErrors } = judged;
  const lastUsed: number[] = [];
  for (const [index, group] of series.groups.entries()) lastUsed.push(group.used ? index : (lastUsed.at(-1) ?? -1));
  const noise = (look: number): NoiseModel => noiseFor(sessions[look]?.noiseModel);
  const kept = new Map<string, unknown>();
  function once<T>(
    kind: string,
    start: number,
    look: number,
    work: (model: NoiseModel, stretch: Series) => Outcome<T>,
  ) {
    const end = lastUsed[look] ?? -1;
    if (end - start < 3) return null;
    const model = noise(look);
    const { readingErrorSd, offsetSd } = readerErrors[look] ?? series;
    const key = `${kind}/${start}/${end}/${model.id}/${readingErrorSd}/${offsetSd}`;
    if (!kept.has(key)) {
      const outcome = work(model, stretchAt(judged, start, look, end));
      kept.set(key, outcome.kind === "ok" ? outcome.value : null);
    }
    return kept.get(key) as T | null;
  }
  return {
    noise,
    evidence: (start, look) => once("evidence", start, look, (model, stretch) => evidence(stretch, model)),
    posterior: (start, look) => once("posterior", start, look, (model, stretch) => posterior(stretch, model, start)),
    changeBelow: (start, look, policy) =>
      once("below", start, look, (model, stretch) => ok(changeBelow(stretch, model, policy))),
    steady: (look, worthwhile, policy) =>
      once("steady", 0, look, (model, stretch) => ok(steadyAt(stretch, model, worthwhile, policy))) ?? false,
  };
}
