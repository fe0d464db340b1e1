import { dayNumber, daysBetween } from "@/lib/domain/calendar-day";
import type { TrackVerdict } from "@/lib/domain/track-verdict";
import { PLATEAU_THRESHOLDS } from "./plateau-thresholds";
import type { TrackHistory } from "./track-history";
import { WATCH_THRESHOLDS } from "./watch-thresholds";
import { decidePosition } from "./worth";

/** Practice of the weeks that are asked about. */
export interface PlateauPractice {
  /** Days on which practice was logged: a list for each drill of which days were asked for; else one list of all. */
  readonly logged: readonly (readonly string[])[];
  /** Days that were asked for in that time, of every drill added up; null: nobody said how many. */
  readonly asked: number | null;
  /** Days of that time in a pause, for an injury or not. */
  readonly stopped: number;
}

/**
 * What is said after ten weeks without a change. `held`: proved to hold, or proved by a change, inside from then or the goal's
 * first day to the last film that counts, and that is no older than the watch's break; `flat`: outside or on the edge, and known to have
 * moved by less than the way that is left, though practised; `unpractised`: the same without the practice; `films`: the films
 * can't tell whether anything moved; `stopped-short`: a proved gain has as good as surely levelled off short of the band.
 */
export type Plateau =
  | { readonly kind: "held" | "films" | "stopped-short"; readonly weeks: number }
  | {
      readonly kind: "flat" | "unpractised";
      readonly weeks: number;
      /** Any change is smaller than this, in the unit. */
      readonly below: number;
      /** Days practised and asked for, each drill’s by themselves and added up: one day with two drills is two of both. */
      readonly practised: number;
      readonly asked: number | null;
      /** Drills that are added up; one where nobody said how many days. */
      readonly drills: number;
    };

/** What is asked of a track's history. */
export type PlateauHistory = Pick<TrackHistory, "sessions" | "goal"> & {
  readonly judged: Pick<TrackHistory["judged"], "goals">;
};

const WEEK = 7;

/** The day since which nothing has been proved to change: of the latest change, or of the first film that counts. */
function steadySince({ sessions }: Pick<TrackHistory, "sessions">, { change }: Pick<TrackVerdict, "change">) {
  if (change !== null) return change.to;
  return sessions.find(({ apart, index }) => apart === null && index !== null)?.session.day ?? null;
}

/** Weeks up to the last film that counts in which the level is proved to have lain inside the goal of now; null: not proved. */
function heldWeeks({ sessions, goal, judged }: PlateauHistory, verdict: TrackVerdict, since: string, today: string) {
  const { change } = verdict;
  // A change that isn't on the list is told as none, and so it proves no holding either.
  const proved =
    change === null
      ? verdict.verdict === "steady"
      : verdict.listed === true && decidePosition(change.after, goal) === "inside";
  const last = sessions.findLast(({ apart, index }) => apart === null && index !== null)?.session.day;
  if (!proved || last === undefined || daysBetween(last, today) > WATCH_THRESHOLDS.watchAway.value) return null;
  const begun = judged.goals?.at(-1)?.from ?? since;
  return Math.floor(daysBetween(begun > since ? begun : since, last) / WEEK);
}

/** How far the level lies from the nearest edge of its goal, or from inside where it may be; never less than what is worthwhile. */
function wayLeft({ goal }: Pick<TrackHistory, "goal">, { levelNow, smallestWorthwhile }: TrackVerdict): number {
  if (levelNow === null) return 0;
  const above = goal.high === null ? 0 : levelNow.estimate - goal.high;
  const below = goal.low === null ? 0 : goal.low - levelNow.estimate;
  return Math.max(above, below, smallestWorthwhile ?? 0);
}

/**
 * What is said of a track that nothing has changed in for ten weeks (SEASON.md 23).
 *
 * @param practice of the last ten weeks up to `today`
 * @returns null: nothing counts yet, it is not ten weeks, no level or goal is known, it lies inside and nothing proves since
 *   when, or practice was stopped so long that none was asked for and nothing can be said of the drill
 */
export function decidePlateau(
  history: PlateauHistory,
  verdict: TrackVerdict,
  practice: PlateauPractice,
  today: string,
): Plateau | null {
  const { plateauWeeks, plateauShare, plateauDaysAWeek } = PLATEAU_THRESHOLDS;
  const since = steadySince(history, verdict);
  if (since === null || verdict.position === null) return null;
  const weeks = Math.floor((dayNumber(today) - dayNumber(since)) / WEEK);
  if (weeks < plateauWeeks.value) return null;
  if (verdict.reach?.kind === "stopped-short") return { kind: "stopped-short", weeks };
  if (verdict.position === "inside") {
    const held = heldWeeks(history, verdict, since, today);
    return held === null || held < plateauWeeks.value ? null : { kind: "held", weeks: held };
  }
  const below = verdict.verdict === "steady" ? verdict.smallestWorthwhile : verdict.changeBelow;
  if (below === null || below > wayLeft(history, verdict)) return { kind: "films", weeks };
  const from = dayNumber(today) - plateauWeeks.value * WEEK;
  const within = (day: string): boolean => dayNumber(day) > from && day <= today;
  const practised = practice.logged.reduce((sum, days) => sum + new Set(days.filter(within)).size, 0);
  const { asked } = practice;
  const free = plateauWeeks.value * WEEK - practice.stopped;
  if (practice.stopped > 0 && (asked === 0 || free <= 0)) return null;
  const enough = asked === null ? (free / WEEK) * plateauDaysAWeek.value : plateauShare.value * asked;
  return {
    kind: practised >= enough ? "flat" : "unpractised",
    weeks,
    below,
    practised,
    asked,
    drills: practice.logged.length,
  };
}
