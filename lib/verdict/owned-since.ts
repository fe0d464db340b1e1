import type { CalendarDay } from "@/lib/domain/calendar-day";
import type { Edges } from "@/lib/domain/fundamental";
import type { DatedGoal, JudgedTrack } from "@/lib/domain/judged-track";
import { type OwningRule, owningRuleOn } from "@/lib/domain/owning-rule";
import type { Interval, Verdict } from "@/lib/domain/track-verdict";
import { datedGoalOn } from "./goal-at";
import type { JudgedSeries } from "./judged-series";
import type { Policy } from "./policy";
import { decidePosition } from "./worth";

/** What the owning rule asks of a look; each answer may be computed when asked. */
export interface OwnedLook {
  level(): Interval | null;
  /** Share of swings inside a goal, 0 to 1. */
  share(goal: Edges): Interval | null;
  verdict(): Verdict;
  /** Day on which the change was proved whose word the verdict is; null: no change is proved. */
  provedOn(): CalendarDay | null;
}

/** The built-in owning rule, as the policy has it. */
export function policyOwning(policy: Policy): OwningRule {
  return {
    sessions: policy.ownedSessions,
    spanDays: policy.ownedSpan,
    restDays: policy.ownedRest,
    share: policy.ownedShare,
    shareLow: policy.ownedShareLow,
  };
}

/** Since when a track is owned. */
export interface OwnedDays {
  /** As known at each look, one entry a look in date order. */
  readonly looks: readonly (CalendarDay | null)[];
  /** As it stands now: the same as at the last look, but where the goal changed after it. */
  readonly now: CalendarDay | null;
}

/**
 * Day on which the owning rule first held, as known at each look; null: not owned then.
 *
 * The rule at a look: the last so many used sessions span enough days, the last of them lies long enough after the last
 * practice (not known: not owned), the level was inside the goal band at the look after each, and the share of swings
 * inside is large enough, estimate and lower end. Goal and rule are those in force on the day of the look. Lost when a
 * slip is proved under the goal in force, and by nothing else: a stricter rule asks nothing of what is owned already.
 *
 * On the first day of a new goal the question is asked anew, of the films up to then: what was owned under the goal
 * before is owned from that day on, or not.
 *
 * @param looks one a session, in date order
 * @returns entries depend on the looks up to theirs
 */
export function ownedSince(
  track: JudgedTrack,
  judged: JudgedSeries,
  looks: readonly OwnedLook[],
  policy: Policy,
): OwnedDays {
  if (track.goal === undefined) return { looks: looks.map(() => null), now: null };
  const { groups } = judged.series;
  const builtIn = policyOwning(policy);
  const used: number[] = [];
  /** Whether the rule of a day holds of the films so far. */
  const holds = (goal: DatedGoal, day: CalendarDay): boolean => {
    const rule = owningRuleOn(track.owning ?? [], day) ?? builtIn;
    const last = used.slice(-rule.sessions);
    const [first, at] = [last[0], last.at(-1)];
    if (first === undefined || at === undefined || last.length < rule.sessions) return false;
    if ((groups[at]?.day ?? 0) - (groups[first]?.day ?? 0) < rule.spanDays) return false;
    const rest = judged.sessions[at]?.daysSincePractice;
    if (rest === undefined || rest < rule.restDays) return false;
    if (![...last].reverse().every((each) => isInside(looks[each] as OwnedLook, goal))) return false;
    const share = (looks[at] as OwnedLook).share(goal);
    if (share === null || share.estimate < rule.share || share.low80 < rule.shareLow) return false;
    return !isLost(looks[at] as OwnedLook, goal);
  };
  const anew = (goal: DatedGoal): CalendarDay | null => (holds(goal, goal.from) ? goal.from : null);
  let since: CalendarDay | null = null;
  let before: DatedGoal | null = null;
  const known = looks.map((look, at) => {
    const { date } = judged.sessions[at] as { date: CalendarDay };
    const goal = datedGoalOn(track, date);
    if (before !== null && goal.from !== before.from) since = anew(goal);
    before = goal;
    if (groups[at]?.used !== true) return since;
    used.push(at);
    if (since !== null) {
      if (isLost(look, goal)) since = null;
    } else if (holds(goal, date)) since = date;
    return since;
  });
  const last = track.goals?.at(-1);
  const moved = before !== null && last !== undefined && last.from > (before as DatedGoal).from;
  return { looks: known, now: moved ? anew(last) : since };
}

function isInside(look: OwnedLook, goal: Edges): boolean {
  const level = look.level();
  return level !== null && (goal.low !== null || goal.high !== null) && decidePosition(level, goal) === "inside";
}

/** A slip that was proved under an earlier goal keeps its word and takes nothing from a later goal's question. */
function isLost(look: OwnedLook, goal: DatedGoal): boolean {
  if (look.verdict() !== "slip") return false;
  const provedOn = look.provedOn();
  return provedOn === null || provedOn >= goal.from;
}
