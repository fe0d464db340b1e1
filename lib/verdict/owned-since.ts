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
 * Day on which the owning rule first held, as known then; null: not owned.
 *
 * The rule at a look: the last so many used sessions span enough days, the last of them lies long enough after the
 * last practice (not known: not owned), the level was inside the goal band at the look after each, and the share of
 * swings inside is large enough, estimate and lower end. Lost when a slip is proved.
 *
 * @param looks one a session, in date order
 */
export function ownedSince(
  track: JudgedTrack,
  judged: JudgedSeries,
  looks: readonly OwnedLook[],
  policy: Policy,
): CalendarDay | null {
  const { goal } = track;
  if (goal === undefined) return null;
  const { groups } = judged.series;
  const inside = (at: number): boolean => {
    const level = (looks[at] as OwnedLook).level();
    return level !== null && decidePosition(level, goal) === "inside";
  };
  const used: number[] = [];
  let since: CalendarDay | null = null;
  looks.forEach((look, at) => {
    const session = judged.sessions[at];
    const day = groups[at]?.day;
    if (session === undefined || day === undefined || groups[at]?.used !== true) return;
    used.push(at);
    if (since !== null) {
      if (look.verdict() === "slip") since = null;
      return;
    }
    const last = used.slice(-policy.ownedSessions);
    const firstDay = groups[last[0] as number]?.day ?? day;
    if (last.length < policy.ownedSessions || day - firstDay < policy.ownedSpan) return;
    if (session.daysSincePractice === undefined || session.daysSincePractice < policy.ownedRest) return;
    if (![...last].reverse().every(inside)) return;
    const share = look.share();
    if (share === null || share.estimate < policy.ownedShare || share.low80 < policy.ownedShareLow) return;
    if (look.verdict() !== "slip") since = session.date;
  });
  return since;
}
