import type { CalendarDay } from "@/lib/domain/calendar-day";
import type { Direction, OwnedWatch } from "@/lib/domain/track-verdict";
import { type RecentRun, recentRuns } from "@/lib/stats/recent-runs";
import { taughtNoise } from "@/lib/stats/taught-noise";
import { trackOn } from "./goal-at";
import { stretchAt } from "./judged-series";
import { lateRiseAt } from "./limit-at";
import type { Policy } from "./policy";
import { levelAt, posteriorAt, type TrackState, wordAt } from "./track-state";
import { leadsAway } from "./worth";

/** An alarm as it stands: positions of the first low session and of the look that raised it, and which way. */
interface Raised {
  readonly start: number;
  readonly raisedAt: number;
  readonly direction: Direction;
  readonly run: RecentRun;
}

/** A track under watch: the look from which it was owned, and the first session of the level that it had when last owned. */
interface Watch {
  readonly ownedAt: number;
  readonly first: number;
}

/** The used sessions that the watch looks at: positions on the level that is owned, and how many came since it is. */
interface Watched {
  readonly first: number;
  readonly used: readonly number[];
  readonly sinceOwned: number;
}

const DIRECTIONS: readonly Direction[] = ["up", "down"];

/**
 * Whether the latest sessions of an owned track lie off its level, away from the goal: an early alarm, no proof.
 *
 * At each look the last one to four used sessions since the track is owned are held against those before them on the
 * same level: a step of about three sds of a session mean, away from the goal, against none. What the pool taught of
 * its noise has to reach the limit; the whole noise model, for two sessions or more with one odd day, at most so much
 * less. A session alone has a higher limit, and none just after a break. An alarm stands until its sessions fit the old
 * level as well. A slip that is proved ends the owning, not the watch: that goes on from the level that was owned.
 *
 * @param owned day since which the track is owned, one entry a look (see `ownedSince`)
 * @returns the alarm at each look, null: none; an entry depends on the looks up to it, so a shorter track says the same
 */
export function watchOwned(
  state: TrackState,
  owned: readonly (CalendarDay | null)[],
  policy: Policy,
): readonly (OwnedWatch | null)[] {
  let raised: Raised | null = null;
  let watch: Watch | null = null;
  return owned.map((since, at) => {
    if (since !== null) watch = { ownedAt: watch?.ownedAt ?? at, first: levelFrom(state, at) };
    else if (watch === null || wordAt(state, at) !== "slip") {
      raised = null;
      watch = null;
      return null;
    }
    if (state.judged.series.groups[at]?.used === true) {
      const watched = watchedAt(state, at, watch);
      raised = (raised === null ? null : stillOff(state, watched, raised, policy)) ?? offLevel(state, watched, policy);
    }
    return raised === null ? null : describe(state, raised);
  });
}

/** First session of the level that is held at a look. */
function levelFrom(state: TrackState, at: number): number {
  return state.said[at]?.claims.at(-1)?.newLevel.surelyFrom ?? 0;
}

function watchedAt(state: TrackState, at: number, { first, ownedAt }: Watch): Watched {
  const { groups } = state.judged.series;
  const used = groups.flatMap((group, index) => (group.used && index >= first && index <= at ? [index] : []));
  return { first, used, sinceOwned: used.filter((index) => index > ownedAt).length };
}

function believed(groups: number, policy: Policy) {
  return { mean: policy.watchSize, sd: groups === 1 ? policy.watchSizeSdAlone : policy.watchSizeSd };
}

/** Runs of the latest sessions under the noise that the pool taught, or under the whole model; null: too few sessions. */
function runsOf(
  state: TrackState,
  watched: Watched,
  lengths: readonly number[],
  noise: "taught" | "whole",
  policy: Policy,
) {
  const at = watched.used.at(-1) as number;
  const model = state.looks.noise(at);
  const series = stretchAt(state.judged, watched.first, at);
  const found = recentRuns(series, noise === "taught" ? taughtNoise(model) : model, lengths, (groups) =>
    believed(groups, policy),
  );
  return found.kind === "ok" ? found.value : null;
}

/** The alarm that a look raises; null: none. */
function offLevel(state: TrackState, watched: Watched, policy: Policy): Raised | null {
  const { used } = watched;
  const longest = Math.min(policy.watchSessions, watched.sinceOwned, used.length - policy.watchBaseline);
  const lengths = Array.from({ length: Math.max(0, longest) }, (_, i) => i + 1);
  if (lengths.length === 0) return null;
  const reaching = candidates(state, watched, lengths, policy);
  if (reaching.length === 0) return null;
  const before = used.at(-1 - Math.max(...reaching.map(({ run }) => run.groups))) as number;
  const away = DIRECTIONS.filter((direction) => isAway(state, before, used.at(-1) as number, direction, policy));
  // Where either way leads out of the band, each may use half of the alarms.
  const more = Math.log(Math.max(1, away.length));
  const [most] = reaching
    .filter(({ direction, beyond }) => away.includes(direction) && beyond >= more)
    .sort((a, b) => b.run[b.direction] - a.run[a.direction]);
  if (most === undefined) return null;
  return {
    start: used.at(-most.run.groups) as number,
    raisedAt: used.at(-1) as number,
    direction: most.direction,
    run: most.run,
  };
}

/** Runs that reach their limit one way, and how far they go beyond it. */
function candidates(state: TrackState, watched: Watched, lengths: readonly number[], policy: Policy) {
  const limitOf = (groups: number): number => watchLimitOf(state, watched, groups, policy);
  const taught = runsOf(state, watched, lengths, "taught", policy);
  const likely = (taught?.runs ?? []).filter((run) => Math.max(run.up, run.down) >= limitOf(run.groups));
  if (likely.length === 0) return [];
  const lengthsLeft = likely.map((run) => run.groups);
  const whole = runsOf(state, watched, lengthsLeft, "whole", policy);
  if (whole === null) return [];
  return likely.flatMap((run, i) =>
    DIRECTIONS.flatMap((direction) => {
      const doubted = (whole.runs[i] as RecentRun)[direction] - (run.groups > 1 ? whole.oddGroup : 0);
      const beyond = Math.min(run[direction], doubted + policy.watchDoubt) - limitOf(run.groups);
      return beyond >= 0 ? [{ run, direction, beyond }] : [];
    }),
  );
}

/** The limit that a run of so many sessions has to reach at a look; a session alone just after a break never does. */
function watchLimitOf(state: TrackState, watched: Watched, groups: number, policy: Policy): number {
  if (groups === 1 && afterBreak(state, watched, policy)) return Number.POSITIVE_INFINITY;
  const more = groups === 1 ? policy.watchLimitAlone : groups > 2 ? policy.watchLimitLonger : 0;
  return policy.watchLimit + more + lateRiseAt((watched.used.at(-1) as number) + 1, policy);
}

function afterBreak(state: TrackState, { used }: Watched, policy: Policy): boolean {
  const dayOf = (index: number): number => (state.judged.series.groups[index] as { day: number }).day;
  return dayOf(used.at(-1) as number) - dayOf(used.at(-2) as number) > policy.watchAway;
}

/** Whether a step of the size watched for would lead away from the goal, from the level that the track had at a look before. */
function isAway(state: TrackState, before: number, at: number, direction: Direction, policy: Policy): boolean {
  const [found, level] = [posteriorAt(state, at), levelAt(state, before)];
  if (found === null || level === null) return false;
  const size = (direction === "up" ? 1 : -1) * policy.watchSize * found.unitSd;
  const { date } = state.judged.sessions[at] as { date: CalendarDay };
  return leadsAway(trackOn(state.track, date), found, level.estimate, size, policy);
}

/** A standing alarm after one more session; null: its sessions fit the old level as well, with one odd day. */
function stillOff(state: TrackState, watched: Watched, raised: Raised, policy: Policy): Raised | null {
  const groups = watched.used.filter((index) => index >= raised.start).length;
  if (watched.used.length - groups < 1) return null;
  const found = runsOf(state, watched, [groups], "taught", policy);
  const run = found?.runs[0];
  if (found === null || run === undefined) return null;
  return run[raised.direction] - found.oddGroup >= policy.watchHold ? { ...raised, run } : null;
}

function describe(state: TrackState, raised: Raised): OwnedWatch {
  const dateAt = (index: number): CalendarDay => (state.judged.sessions[index] as { date: CalendarDay }).date;
  const { run, direction } = raised;
  return {
    since: dateAt(raised.start),
    sessions: run.groups,
    raisedOn: dateAt(raised.raisedAt),
    direction,
    size: run.size,
    logBayesFactor: run[direction],
  };
}
