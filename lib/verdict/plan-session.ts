import type { Asking } from "@/lib/domain/asking";
import { daysBetween } from "@/lib/domain/calendar-day";
import { type Fundamental, VIEWS, type View } from "@/lib/domain/fundamental";
import type { TrackVerdict } from "@/lib/domain/track-verdict";
import { KEEP_THRESHOLDS } from "./keep-thresholds";
import { type OfferedPlan, offeredPlan } from "./offered-plan";
import type { PlanAnswers } from "./plan-answers";
import { planSeconds } from "./plan-minutes";
import { planProgress } from "./plan-progress";
import { PLAN_THRESHOLDS } from "./plan-thresholds";
import { rests } from "./rests";
import type { TrackHistory } from "./track-history";
import { WATCH_THRESHOLDS } from "./watch-thresholds";

/** A judged track with what was decided about its question. */
export interface PlanTrack {
  readonly history: TrackHistory;
  readonly verdict: TrackVerdict;
  readonly asking: Asking | null;
}

/**
 * Why a fundamental is read: it is the one in hand; an alarm of the watch; a plan that was taken; upstream and in doubt; it is
 * kept; it waits its turn; it was never measured.
 */
export const PLAN_ROLES = ["in-hand", "alarm", "asked", "doubt", "keep", "waits", "unknown"] as const;

/** See `PLAN_ROLES`. */
export type PlanRole = (typeof PLAN_ROLES)[number];

/** What reading it would tell. */
export type PlanTells =
  | { readonly kind: "plan"; readonly plan: OfferedPlan }
  /** Of a plan that was taken: films that came, of how many with how many swings each. */
  | {
      readonly kind: "taken";
      readonly come: number;
      readonly of: number;
      readonly swingsEach: number;
      readonly chance: number;
    }
  | { readonly kind: "guards" | "stopped" | "first-look" | "no-plan" | "first" };

/** One fundamental of the plan. */
export interface PlannedFundamental {
  readonly fundamental: Fundamental;
  readonly track: PlanTrack | null;
  readonly role: PlanRole;
  readonly swings: number;
  readonly tells: PlanTells;
}

/** What isn't read, and why: it rests, its view isn't sent, it would take too long, or it was never measured. */
export interface LeftOutFundamental {
  readonly fundamental: Fundamental;
  readonly why: "rests" | "not-sent" | "minutes" | "unknown";
}

/** The next film of a student. */
export interface SessionPlan {
  readonly items: readonly PlannedFundamental[];
  /** Of the film: the most that is read of any. */
  readonly swings: number;
  readonly views: readonly View[];
  readonly seconds: number;
  readonly leftOut: readonly LeftOutFundamental[];
  /** Swings that were asked for twice and didn't come; null: they do come. */
  readonly fewerSwings: number | null;
}

/** What the plan rests on. */
export interface PlanInput {
  /** Of the clubs in hand, in the order of work. */
  readonly tracks: readonly PlanTrack[];
  /** Of the academy, in the order of work. */
  readonly fundamentals: readonly Fundamental[];
  readonly inHand: string | null;
  /** Upstream of it and not known yet: measured first. */
  readonly blocks: readonly string[];
  readonly answers: PlanAnswers;
  /** Ids of the sessions of those clubs, oldest first. */
  readonly films: readonly string[];
  /** `YYYY-MM-DD`. */
  readonly today: string;
  /** What the coach wants instead, the swings of the first that is read; null: as proposed. */
  readonly wish: { readonly fundamentals: readonly string[] | null; readonly swings: number | null };
}

type Candidate = Omit<PlannedFundamental, "swings"> & { readonly rank: number; readonly rate: number };

/** Films since the one in which it was last read; all of them where it never was. */
function filmsSince({ films }: PlanInput, track: PlanTrack | null): number {
  const read = new Set(track?.history.sessions.map(({ session }) => session.id));
  return films.length - 1 - films.findLastIndex((id) => read.has(id));
}

function tellsOf({ history, verdict, asking }: PlanTrack): PlanTells {
  if (verdict.verdict !== "open") return { kind: "guards" };
  if (asking?.state === "stopped") return { kind: "stopped" };
  if (asking?.state === "planned" && asking.plan !== null) {
    const { come, state } = planProgress(asking.plan, history);
    const { sessions, swingsEach, chance } = asking.plan;
    if (state === "waiting") return { kind: "taken", come, of: sessions, swingsEach, chance };
  }
  const plan = offeredPlan(verdict);
  if (plan !== null) return { kind: "plan", plan };
  return {
    kind:
      verdict.settle !== null && "none" in verdict.settle && verdict.settle.none === "first-look"
        ? "first-look"
        : "no-plan",
  };
}

/** Chance of an answer for each second of reading, over all films that it takes; 0: reading answers nothing. */
function rateOf(fundamental: Fundamental, tells: PlanTells): number {
  const seconds = (films: number, swings: number): number => films * planSeconds([{ fundamental, swings }]);
  const { planSwings } = PLAN_THRESHOLDS;
  if (tells.kind === "taken") return tells.chance / seconds(Math.max(1, tells.of - tells.come), planSwings.value);
  if (tells.kind !== "plan") return 0;
  const { plan } = tells;
  return (plan.chance * ("probability" in plan ? plan.probability : 1)) / seconds(plan.sessions, plan.swingsEach);
}

function roleOf(input: PlanInput, track: PlanTrack, tells: PlanTells): PlanRole {
  const { fundamental } = track.history;
  const { position, watch } = track.verdict;
  if (fundamental.id === input.inHand) return "in-hand";
  if (watch !== null) return "alarm";
  if (tells.kind === "taken") return "asked";
  if (input.blocks.includes(fundamental.id)) return "doubt";
  return position === "inside" ? "keep" : "waits";
}

/** It rests, and was read lately: its turn hasn't come. After six weeks its level is to be checked, however few films came since. */
function restsNow(input: PlanInput, track: PlanTrack): boolean {
  const last = track.history.sessions.findLast(({ apart }) => apart === null)?.session.day;
  if (last === undefined || daysBetween(last, input.today) > WATCH_THRESHOLDS.watchAway.value) return false;
  return rests(track.verdict) && filmsSince(input, track) < KEEP_THRESHOLDS.restEvery.value - 1;
}

function candidates(input: PlanInput): readonly Candidate[] {
  const measured = input.tracks.map((track): Candidate => {
    const tells = tellsOf(track);
    const { fundamental } = track.history;
    const role = roleOf(input, track, tells);
    return { fundamental, track, role, tells, rank: PLAN_ROLES.indexOf(role), rate: rateOf(fundamental, tells) };
  });
  const known = new Set<string>(measured.map(({ fundamental }) => fundamental.id));
  const never = input.fundamentals
    .filter(({ id, derivedFrom }) => derivedFrom === null && !known.has(id))
    .map((fundamental): Candidate => {
      const role = fundamental.id === input.inHand ? "in-hand" : "unknown";
      const rank = PLAN_ROLES.indexOf(input.blocks.includes(fundamental.id) ? "doubt" : role);
      return { fundamental, track: null, role, tells: { kind: "first" }, rank, rate: 0 };
    });
  const turn = ({ role, track }: Candidate): number =>
    role === "keep" && filmsSince(input, track) >= KEEP_THRESHOLDS.restEvery.value ? 0 : 1;
  return [...measured, ...never].sort(
    (a, b) =>
      a.rank - b.rank ||
      turn(a) - turn(b) ||
      b.rate - a.rate ||
      filmsSince(input, b.track) - filmsSince(input, a.track) ||
      a.fundamental.order - b.fundamental.order,
  );
}

function swingsOf({ role, tells, track }: Candidate, place: number, { wish, answers }: PlanInput): number {
  const { planSwings, planKeepSwings, planAsks } = PLAN_THRESHOLDS;
  const asked =
    tells.kind === "taken"
      ? (track?.asking?.plan?.swingsEach ?? null)
      : tells.kind === "plan" && role === "in-hand"
        ? tells.plan.swingsEach
        : null;
  const own = asked ?? (["in-hand", "alarm", "doubt"].includes(role) ? planSwings.value : planKeepSwings.value);
  if (wish.swings !== null) return place === 0 ? wish.swings : Math.min(own, wish.swings);
  return answers.short.films >= planAsks.value ? Math.max(1, Math.min(own, answers.short.came)) : own;
}

/** What the coach picked, in the order of the proposal; else the proposal, with what it leaves out. */
function choose(input: PlanInput): {
  readonly chosen: readonly Candidate[];
  readonly leftOut: readonly LeftOutFundamental[];
} {
  const all = candidates(input);
  const { planAsks, planFundamentals } = PLAN_THRESHOLDS;
  const wished = input.wish.fundamentals;
  const left = (why: LeftOutFundamental["why"], of: readonly Candidate[]): LeftOutFundamental[] =>
    of.map(({ fundamental }) => ({ fundamental, why }));
  const resting = all.filter(({ track, role }) => track !== null && role !== "in-hand" && restsNow(input, track));
  if (wished !== null) {
    const chosen = all.filter(({ fundamental }) => wished.includes(fundamental.id));
    const others = resting.filter((each) => !chosen.includes(each));
    return { chosen, leftOut: left("rests", others) };
  }
  const isUnsent = ({ fundamental }: Candidate): boolean => input.answers.notSent[fundamental.view] >= planAsks.value;
  const unsent = all.filter((each) => each.track !== null && isUnsent(each));
  const ready = all.filter((each) => !resting.includes(each) && !isUnsent(each));
  // Where every view was asked for in vain, there is nothing to plan without.
  const usable = ready.length === 0 ? all.filter((each) => !resting.includes(each)) : ready;
  const chosen = usable.slice(0, planFundamentals.value);
  const hand = input.fundamentals.find(({ id }) => id === input.inHand);
  const unknown = all.filter(
    (each) => each.role === "unknown" && !chosen.includes(each) && each.fundamental.order < (hand?.order ?? 0),
  );
  return {
    chosen,
    leftOut: [
      ...left("rests", resting),
      ...(ready.length === 0 ? [] : left("not-sent", unsent)),
      ...left("unknown", unknown),
    ],
  };
}

/**
 * What the next film of a student is to show: by default the one in hand and two more, first an alarm over what is owned, then
 * what a plan was taken for, then what is upstream and in doubt, then keeps, then what waits. Among equals: a keep that three
 * films left out, what a minute of reading settles most, what was longest not read. Settled, owned fundamentals rest between every third film. A view,
 * or swings, that were asked for twice and didn't come are planned without. Minutes stay within the cap.
 *
 * Assumes nothing about the future but what the plans of the verdicts promise; without any track the first of the order of
 * work are planned. No items only where the academy has no fundamental, or a wish names none that is known.
 */
export function planSession(input: PlanInput): SessionPlan {
  const { chosen, leftOut } = choose(input);
  const items = chosen.map((each, place): PlannedFundamental => {
    const { rank: _rank, rate: _rate, ...item } = each;
    return { ...item, swings: swingsOf(each, place, input) };
  });
  const late: LeftOutFundamental[] = [];
  const cap = PLAN_THRESHOLDS.planMinutes.value * 60;
  // What a coach picked is the coach's to cut.
  while (input.wish.fundamentals === null && items.length > 1 && planSeconds(items) > cap)
    late.push({ fundamental: (items.pop() as PlannedFundamental).fundamental, why: "minutes" });
  const { short } = input.answers;
  const fewer = input.wish.swings === null && short.films >= PLAN_THRESHOLDS.planAsks.value;
  return {
    items,
    swings: Math.max(0, ...items.map(({ swings }) => swings)),
    views: VIEWS.filter((view) => items.some(({ fundamental }) => fundamental.view === view)),
    seconds: planSeconds(items),
    leftOut: [...late, ...leftOut],
    fewerSwings: fewer ? Math.max(1, short.came) : null,
  };
}
