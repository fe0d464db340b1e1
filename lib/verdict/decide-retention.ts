import type { Interval, ProvedChange, TrackVerdict } from "@/lib/domain/track-verdict";
import { DRILL_THRESHOLDS } from "./drill-thresholds";
import type { RetentionFilm } from "./retention-films";
import type { TrackHistory } from "./session-history";
import { sessionSd } from "./session-sd";

/** Days after the last practice of a few films: the least and the most. */
interface Rested {
  readonly films: number;
  readonly least: number;
  readonly most: number;
  /** `logged`: of one of them at least only the log of practice says it. */
  readonly by: "said" | "logged";
}

/**
 * Whether a proved gain stays without practice. `held`, `lost`: rested films fit the new level, or the old one, so many times
 * better; `unclear`: they tell neither; `soon`: no rested film yet, the others at most so many days after practice;
 * `unknown`: nobody said when practice was; `unfilmed`: no used film since it stands.
 */
export type Retention =
  | ({ readonly kind: "held" | "lost" | "unclear" } & Rested)
  | { readonly kind: "soon"; readonly films: number; readonly most: number }
  | { readonly kind: "unknown"; readonly films: number }
  | { readonly kind: "unfilmed" };

function varianceOf({ low95, high95 }: Interval): number {
  return ((high95 - low95) / (2 * 1.96)) ** 2;
}

/** Natural log: how many times better the mean of the films fits the level after than the one before, doubt of both counted in. */
function logTimes(means: readonly { readonly mean: number; readonly sd: number }[], { before, after }: ProvedChange) {
  const weight = means.reduce((sum, { sd }) => sum + 1 / sd ** 2, 0);
  const mean = means.reduce((sum, each) => sum + each.mean / each.sd ** 2, 0) / weight;
  const [old, fresh] = [1 / weight + varianceOf(before), 1 / weight + varianceOf(after)];
  return ((mean - before.estimate) ** 2 / old - (mean - after.estimate) ** 2 / fresh + Math.log(old / fresh)) / 2;
}

/**
 * Whether the last proved change of a track, if it is a gain, stays without practice. Practice lifts what is seen right after
 * it, whatever is learned; so only films some days after the last practice are asked, and they alone.
 *
 * @param films of the track from the change's last day on, as `retentionFilms` tells them apart
 * @returns null without a proved change that is a gain
 * @source Guadagnoli and others 2002 (instruction looked worse at once and better two weeks later)
 */
export function decideRetention(
  history: Pick<TrackHistory, "judged" | "fundamental">,
  verdict: Pick<TrackVerdict, "change" | "errorBudget">,
  films: readonly RetentionFilm[],
): Retention | null {
  const { change } = verdict;
  if (change === null || change.verdict !== "gain" || change.moved !== null) return null;
  const rested = films.filter((film) => film.kind === "rested");
  const soon = films.filter((film) => film.kind === "soon");
  const unknown = films.filter((film) => film.kind === "unknown");
  if (rested.length > 0) {
    const means = rested.map(({ entry }) => ({
      mean: entry.swings.reduce((sum, { value }) => sum + value, 0) / entry.swings.length,
      sd: Math.max(sessionSd(history, verdict, entry), 1e-9),
    }));
    const log = logTimes(means, change);
    const enough = Math.log(DRILL_THRESHOLDS.retentionTimes.value);
    const days = rested.map((film) => film.days);
    return {
      kind: log >= enough ? "held" : log <= -enough ? "lost" : "unclear",
      films: rested.length,
      least: Math.min(...days),
      most: Math.max(...days),
      by: rested.some(({ by }) => by === "logged") ? "logged" : "said",
    };
  }
  if (soon.length > 0) return { kind: "soon", films: soon.length, most: Math.max(...soon.map(({ days }) => days)) };
  return unknown.length > 0 ? { kind: "unknown", films: unknown.length } : { kind: "unfilmed" };
}
