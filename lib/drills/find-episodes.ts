import { dayNumber } from "@/lib/domain/calendar-day";
import type { ComparedDrill, ComparedTrack } from "@/lib/domain/compared-track";
import { nonOverlap } from "@/lib/stats/non-overlap";
import type { Policy } from "@/lib/verdict/policy";
import { beforeAt, type Episode, outcomesOf } from "./episode";
import type { ScoredSession } from "./scored-track";

/** What one track gives the comparison. */
export type Found =
  | { readonly kind: "episode"; readonly episode: Episode }
  /** Neither a drill nor a stretch marked as waiting. */
  | { readonly kind: "without" }
  | { readonly kind: "left-out"; readonly why: "no-before" | "no-after" };

/**
 * The first stretch of a track: on a drill, or marked as waiting; whichever began first.
 *
 * @param sessions of the track, in date order
 * @param length days that a drill mostly lasts, after which what stays without one is measured; null: not known
 */
export function findFirst(
  track: ComparedTrack,
  sessions: readonly ScoredSession[],
  length: number | null,
  policy: Policy,
): Found {
  const first = firstDrill(track);
  const [wait] = (track.waiting ?? []).toSorted((a, b) => dayNumber(a.from) - dayNumber(b.from));
  const firstDay = first === undefined ? Number.POSITIVE_INFINITY : dayNumber(first.start);
  if (wait !== undefined && dayNumber(wait.from) < firstDay) {
    const start = dayNumber(wait.from);
    const end = length === null ? null : start + length;
    const stretch = { ...without(start, firstDay - 1, end), until: Math.min(dayNumber(wait.to), firstDay - 1) };
    const found = episodeAt(track, sessions, { ...stretch, marked: true }, policy);
    if (found.kind === "episode" || first === undefined) return found;
  }
  if (first === undefined) return { kind: "without" };
  const end = first.end === undefined ? null : dayNumber(first.end);
  const ever = Number.POSITIVE_INFINITY;
  const stretch = { drill: first, start: firstDay, end, until: ever, freeUntil: ever, marked: false };
  return episodeAt(track, sessions, stretch, policy);
}

/** The drill of a track that began first; of one day the first named. */
export function firstDrill(track: ComparedTrack): ComparedDrill | undefined {
  return track.drills.toSorted((a, b) => dayNumber(a.start) - dayNumber(b.start))[0];
}

/**
 * The first run without a drill that is at least so deep; null: none, or no session after it.
 *
 * @param sessions of the track, in date order
 * @param depth how far the run lies below what was before it, at least, in the unit
 * @param runToEnd days from the last session of a run to when the drill mostly ends that is begun after it: what stays without
 * one is measured from as long after; null: not known
 */
export function findEquallyBad(
  track: ComparedTrack,
  sessions: readonly ScoredSession[],
  depth: number,
  runToEnd: number | null,
  policy: Policy,
): Episode | null {
  const scores = sessions.map((session) => session.score);
  for (let at = policy.runSessions + policy.earlierSessions; at < sessions.length; at++) {
    const { run, earlier } = beforeAt(scores, at, policy.runSessions, policy);
    if (earlier === null || earlier.mean - run < depth) continue;
    // A coach begins when the run is in: the day after its last session.
    const { day } = sessions[at - 1] as ScoredSession;
    const end = runToEnd === null ? null : day + runToEnd;
    const found = episodeAt(track, sessions, without(day + 1, Number.POSITIVE_INFINITY, end), policy);
    if (found.kind === "episode") return found.episode;
  }
  return null;
}

interface Stretch {
  readonly drill: ComparedDrill | null;
  readonly start: number;
  /** Its last day, after which what stays is measured; null: not on file. */
  readonly end: number | null;
  /** The last day of the sessions that count, and of those that count for what stays. */
  readonly until: number;
  readonly freeUntil: number;
  readonly marked: boolean;
}

function without(start: number, freeUntil: number, end: number | null): Stretch {
  return { drill: null, start, end, until: freeUntil, freeUntil, marked: false };
}

function episodeAt(track: ComparedTrack, sessions: readonly ScoredSession[], stretch: Stretch, policy: Policy): Found {
  const { drill, start } = stretch;
  const open = sessions.findIndex((session) => session.day >= start);
  const at = open < 0 ? sessions.length : open;
  if (at === 0) return { kind: "left-out", why: "no-before" };
  const after = sessions
    .slice(at)
    .filter((session) => session.day <= stretch.until)
    .slice(0, policy.afterSessions);
  const last = after.at(-1);
  if (last === undefined) return { kind: "left-out", why: "no-after" };
  const retained = sessions.filter((session) => staysAt(session, stretch, policy));
  const windows = { at, after, retained };
  // From the run's last session, and not from the start: a run without a drill has no day on which anything began.
  const from = (sessions[at - 1] as ScoredSession).day;
  const middle = (of: readonly ScoredSession[]) => of.reduce((sum, { day }) => sum + day, 0) / of.length - from;
  return {
    kind: "episode",
    episode: {
      student: track.student,
      coach: track.coach,
      drill: drill?.drill ?? null,
      marked: stretch.marked,
      byChance: drill?.assigned === "chance",
      start,
      sessions: after.length,
      toMiddle: middle(after),
      toRetained: retained.length === 0 ? null : middle(retained),
      score: outcomesOf(sessions, windows, (session) => session.score, policy),
      higher: shareHigher(sessions.slice(0, at), after),
      inBand: track.goal === undefined ? null : outcomesOf(sessions, windows, (session) => session.inBand ?? 0, policy),
      minutes: drill?.dose?.minutes ?? null,
      overlapped: track.drills.some(
        (other) => other !== drill && dayNumber(other.start) >= start && dayNumber(other.start) <= last.day,
      ),
      ageYears: track.ageYears ?? null,
      hand: track.handedness ?? null,
    },
  };
}

/** Well after the end, and rested or not known to be otherwise; of a drill without an end, from the last practice. */
function staysAt(session: ScoredSession, { drill, start, end, freeUntil }: Stretch, policy: Policy): boolean {
  if (session.day < start || session.day > freeUntil) return false;
  const since = end === null ? (drill === null ? null : session.rested) : session.day - end;
  if (since === null || since < policy.retentionFrom || since > policy.retentionTo) return false;
  return session.rested === null || session.rested >= policy.rested;
}

function shareHigher(before: readonly ScoredSession[], after: readonly ScoredSession[]): number {
  const scores = (of: readonly ScoredSession[]) => of.map((session) => session.score);
  const found = nonOverlap(scores(before), scores(after));
  if (found.kind !== "ok") throw new RangeError(`a stretch needs a session on either side, got ${found.have}`);
  return found.value.pairs;
}
