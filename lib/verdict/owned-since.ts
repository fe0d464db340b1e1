import type { CalendarDay } from "@/lib/domain/calendar-day";
import type { JudgedTrack } from "@/lib/domain/judged-track";
import type { Interval, Verdict } from "@/lib/domain/track-verdict";
import type { JudgedSeries } from "./judged-series";
import type { Policy } from "./policy";
import { decidePosition } from "./worth";

/** What the owning rule asks of a look; each answer may be computed when asked. */
export interface OwnedLook {
  level(): Interval | null;
  share(): Interval | null;
  verdict(): Verdict;
}

/**
 * Day on which the owning rule first held, as known at each look; null: not owned then.
 *
 * The rule at a look: the last so many used sessions span enough days, the last of them lies long enough after the
 * last practice (not known: not owned), the level was inside the goal band at the look after each, and the share of
 * swings inside is large enough, estimate and lower end. Lost when a slip is proved.
 *
 * @param looks one a session, in date order
 * @returns one entry a look, same order; an entry depends on the looks up to it
 */
export function ownedSince(
  track: JudgedTrack,
  judged: JudgedSeries,
  looks: readonly OwnedLook[],
  policy: Policy,
): readonly (CalendarDay | null)[] {
  const { goal } = track;
  if (goal === undefined) return looks.map(() => null);
  const { groups } = judged.series;
  const inside = (at: number): boolean => {
    const level = (looks[at] as OwnedLook).level();
    return level !== null && decidePosition(level, goal) === "inside";
  };
  const used: number[] = [];
  const begins = (look: OwnedLook, at: number): boolean => {
    const last = used.slice(-policy.ownedSessions);
    const [firstDay, day] = [groups[last[0] as number]?.day, groups[at]?.day];
    if (firstDay === undefined || day === undefined) return false;
    if (last.length < policy.ownedSessions || day - firstDay < policy.ownedSpan) return false;
    const rest = judged.sessions[at]?.daysSincePractice;
    if (rest === undefined || rest < policy.ownedRest) return false;
    if (![...last].reverse().every(inside)) return false;
    const share = look.share();
    if (share === null || share.estimate < policy.ownedShare || share.low80 < policy.ownedShareLow) return false;
    return look.verdict() !== "slip";
  };
  let since: CalendarDay | null = null;
  return looks.map((look, at) => {
    if (groups[at]?.used !== true) return since;
    used.push(at);
    if (since !== null) {
      if (look.verdict() === "slip") since = null;
    } else if (begins(look, at)) since = (judged.sessions[at] as { date: CalendarDay }).date;
    return since;
  });
}
