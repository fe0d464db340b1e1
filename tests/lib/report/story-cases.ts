import { BUILT_IN } from "@/lib/domain/catalogue";
import type { Fundamental } from "@/lib/domain/fundamental";
import { HANDS } from "@/lib/domain/handedness";
import type { StudentEvent } from "@/lib/domain/student";
import type { Position, TrackVerdict } from "@/lib/domain/track-verdict";
import type { StorySource, StoryTrack } from "@/lib/report/family-story-source";
import type { Plateau } from "@/lib/verdict/plateau";

/** The day of every story of the tests. */
export const TODAY = "2026-09-12";

const level = (estimate: number) => ({
  estimate,
  ...{ low80: estimate - 1, high80: estimate + 1, low95: estimate - 2, high95: estimate + 2 },
});

/** A proved change of what has its goal from −3 to 4. */
export const change = (verdict: "gain" | "slip" | "steady", [before, after]: readonly [number, number], over = {}) => ({
  ...{ verdict, shape: "step", from: "2026-07-06", to: "2026-07-20", provedOn: "2026-08-02", moved: null },
  ...{ set80: null, set95: null, size: level(after - before), before: level(before), after: level(after) },
  ...over,
});

/** A verdict of which nothing is said but what is handed over. */
export const verdict = (over: Readonly<Record<string, unknown>>): TrackVerdict =>
  ({
    ...{ verdict: "open", moved: null, change: null, changes: [], ownedSince: null, watch: null, position: null },
    ...{ settle: null, settleIfReal: null, settleIfNothing: null, notToldApart: null, changeBelow: null, reach: null },
    evidence: { logBayesFactor: 8, directionUp: 1, limit: 3, noChange: 0.01, priorChange: 0.2 },
    ...{ smallestWorthwhile: 2, sessions: 8, levelNow: level(2) },
    ...over,
  }) as unknown as TrackVerdict;

const proved = (said: "gain" | "slip" | "steady", levels: readonly [number, number], over = {}, of = {}) => {
  const one = change(said, levels, of);
  return verdict({ verdict: said, change: one, changes: [one], ...over });
};
const earlier = change("gain", [9, 1], { from: "2026-04-06", to: "2026-04-20", provedOn: "2026-05-02" });
const slipAgain = change("slip", [1, 9]);

/** Whatever may be said of a track: what stands on the roster's list, what doesn't, and what is open and why. */
export const SAID: Readonly<Record<string, TrackVerdict>> = {
  "better, listed": proved("gain", [9, 1], { listed: true }),
  "better, levelled off short": proved("gain", [14, 7], {
    listed: true,
    reach: { kind: "stopped-short", chance: 0.9 },
  }),
  "better, alone": proved("gain", [9, 1], { listed: false }),
  "better, doubtful since": proved("gain", [9, 1], {
    listed: true,
    evidence: { logBayesFactor: 2, directionUp: 0, limit: 3, noChange: 0.2, priorChange: 0.2 },
  }),
  "better, doubtful since it was read": proved("gain", [9, 1], {
    listed: true,
    evidence: { logBayesFactor: 2, directionUp: 0, limit: 3, noChange: 0.2, priorChange: 0.2 },
    looks: [
      { date: "2026-06-01", verdict: "gain", listed: true, logBayesFactor: 6, directionUp: 0 },
      { date: "2026-09-05", verdict: "gain", listed: true, logBayesFactor: 2, directionUp: 0.1 },
    ],
  }),
  "worse up, listed": proved("slip", [1, 9], { listed: true }),
  "worse down, listed": proved("slip", [1, -9], { listed: true }),
  "worse, further out": proved("slip", [7, 12], { listed: true }),
  "worse again, listed": verdict({
    ...{ verdict: "slip", change: slipAgain, changes: [earlier, slipAgain], listed: true },
    looks: [{ date: "2026-05-02", verdict: "gain", listed: true, logBayesFactor: 6, directionUp: 0 }],
  }),
  "worse, long ago": proved("slip", [1, 9], { listed: true }, { from: "2025-11-06", to: "2026-05-20" }),
  "worse, alone": proved("slip", [1, 9], { listed: false }),
  "moved within, listed": proved("steady", [1, 3], { listed: true, moved: "within" }, { moved: "within" }),
  "moved through, listed": proved("steady", [9, -9], { listed: true, moved: "through" }, { moved: "through" }),
  "moved, no nearer, listed": proved("steady", [9, 8], { listed: true }),
  "moved, alone": proved("steady", [9, -9], { listed: false, moved: "through" }),
  "steady and owned": verdict({ verdict: "steady", ownedSince: "2026-05-23", position: "inside" }),
  "steady, not owned": verdict({ verdict: "steady" }),
  "owned, looked at again": verdict({ verdict: "steady", ownedSince: "2026-05-23", watch: { since: "2026-08-29" } }),
  "open, one more video": verdict({ settleIfReal: { sessions: 1, direction: "up", size: 2, chance: 0.8 } }),
  "open, five more videos": verdict({ settleIfReal: { sessions: 5, direction: "up", size: 2, chance: 0.8 } }),
  "open, no plan": verdict({ settleIfReal: { none: "no-plan", bestChance: 0.5, direction: "up", size: 2 } }),
  "open, nothing seen": verdict({ changeBelow: 3, settleIfNothing: { sessions: 6, changeBelow: 2, chance: 0.8 } }),
  "open, first videos": verdict({ sessions: 1, settle: { none: "first-look", sessionsToFirstLook: 3 } }),
  "open, the phone moved": verdict({ notToldApart: { from: "placement", direction: "up", on: "2026-08-01" } }),
  "open, another reader": verdict({ notToldApart: { from: "reader", direction: "up", on: "2026-08-01" } }),
  "open, taken back": verdict({
    looks: [
      { date: "2026-06-01", verdict: "gain", listed: true, logBayesFactor: 6, directionUp: 0 },
      { date: "2026-09-05", verdict: "open", listed: false, logBayesFactor: 1, directionUp: 0.2 },
    ],
  }),
};

/** Which videos count: all, all but the last for where the phone stood, none, or none lately. */
export const CAMERAS = ["trusted", "last left out", "all left out", "none lately"] as const;

/** What the fundamental is like that a case tells of, with what was said to hold of it. */
export function storyTrack(
  fundamental: Fundamental,
  said: TrackVerdict,
  over: {
    readonly position?: Position | null;
    readonly camera?: (typeof CAMERAS)[number];
    readonly plateau?: Plateau | null;
    readonly begins?: string | null;
    readonly followed?: StoryTrack["followed"];
  } = {},
): StoryTrack {
  const days = ["2026-03-01", "2026-03-28", "2026-06-29", "2026-07-20", "2026-08-02", "2026-09-05"];
  const camera = { kind: "camera", why: "off", offBy: 9 };
  const seen = over.camera === "none lately" ? days.slice(0, 4) : days;
  const sessions = seen.map((day, at) => ({
    session: { day },
    index: at,
    apart:
      over.camera === "all left out" || (over.camera === "last left out" && at === seen.length - 1) ? camera : null,
  }));
  const history = { fundamental, sessions, begins: over.begins ?? null, goal: { low: -3, high: 4 } };
  return {
    history,
    verdict: { ...said, position: over.position === undefined ? said.position : over.position },
    ...{ plateau: over.plateau ?? null, followed: over.followed ?? null },
  } as unknown as StoryTrack;
}

/** What is said after ten weeks without a change. */
export const PLATEAUS: readonly (Plateau | null)[] = [
  null,
  { kind: "held", weeks: 16 },
  { kind: "flat", weeks: 11, below: 2.4, practised: 31, asked: 35, drills: 1 },
  { kind: "flat", weeks: 11, below: 0.9, practised: 24, asked: null, drills: 1 },
  { kind: "flat", weeks: 11, below: 2.4, practised: 41, asked: 50, drills: 2 },
  { kind: "unpractised", weeks: 11, below: 2.4, practised: 6, asked: 35, drills: 2 },
  { kind: "unpractised", weeks: 11, below: 2.4, practised: 0, asked: null, drills: 1 },
  { kind: "films", weeks: 12 },
];

const entry = (day: string, over = {}) => ({
  ...{ id: day, day, assignmentId: "a", minutes: 10, balls: null, felt: null, pain: null, ...over },
  ...({ source: "family", who: "mother", recordedAt: `${day}T12:00:00.000Z` } as const),
});
const days = (count: number) =>
  Array.from({ length: count }, (_, back) => entry(`2026-09-${String(12 - back).padStart(2, "0")}`));

/** The drill in hand of the tests. */
export const TASK = {
  ...{ drill: "Feet on the rails", dose: "20 slow ones, 10 min, 5 days a week", fundamentalId: "foot-line" },
  ...{ start: "2026-08-20", remeasureOn: "2026-09-22" },
};

/** Practice as it was asked for, less, more, none; and pain. */
export const PRACTICES: Readonly<Record<string, Pick<StorySource, "practice" | "task">>> = {
  asked: { practice: days(5), task: { ...TASK, week: { asked: 5, practised: 5, days: 7, stoppedDays: 0 } } },
  every: { practice: days(3), task: { ...TASK, week: { asked: 3, practised: 3, days: 3, stoppedDays: 0 } } },
  less: { practice: days(1), task: { ...TASK, week: { asked: 5, practised: 1, days: 7, stoppedDays: 0 } } },
  more: { practice: days(7), task: { ...TASK, week: { asked: 5, practised: 7, days: 7, stoppedDays: 0 } } },
  none: { practice: [], task: null },
  hurts: {
    practice: [entry("2026-09-12", { minutes: null, pain: "knee" })],
    task: { ...TASK, week: null },
  },
};

const event = (kind: StudentEvent["kind"], over = {}): StudentEvent => ({
  ...{ id: kind, kind, day: "2026-07-01", endDay: "2026-07-04", note: "", place: null, rebaselines: [], ...over },
});

/** What happened: nothing, or something of each kind, or a pause that still lasts. */
export const EVENTS: Readonly<Record<string, readonly StudentEvent[]>> = {
  nothing: [],
  growth: [event("growth", { rebaselines: BUILT_IN.map(({ id }) => id) })],
  "new clubs": [event("new-club", { rebaselines: BUILT_IN.map(({ id }) => id) })],
  break: [event("break")],
  injury: [event("injury", { place: "back", endDay: null })],
  reader: [event("reader-change", { rebaselines: BUILT_IN.map(({ id }) => id) })],
  season: [event("season-start", { rebaselines: BUILT_IN.map(({ id }) => id) })],
};

/** Years of birth: under nine, a child, a grown-up, not known. */
export const BORN = [2019, 2012, 1980, null] as const;

/** A right-hander and a left-hander. */
export const BOTH = HANDS;

/** A story's source with nothing on file but what is handed over. */
export function storySource(over: Partial<StorySource>): StorySource {
  return {
    student: { alias: "Dot", hand: "right", birthYear: 2012 },
    today: TODAY,
    ...{ tracks: [], videos: [], task: null, drills: [], practice: [], events: [], contact: null, openings: [] },
    ...over,
  };
}

/** The fundamental of an id. */
export function fundamentalOf(id: string): Fundamental {
  const found = BUILT_IN.find((each) => each.id === id);
  if (found === undefined) throw new Error(`no fundamental ${id}`);
  return found;
}

/** A verdict of the list by its name. */
export function saidOf(name: string): TrackVerdict {
  const found = SAID[name];
  if (found === undefined) throw new Error(`no verdict ${name}`);
  return found;
}

const trackOf =
  (id: string) =>
  (name: string, over: Parameters<typeof storyTrack>[2] = {}): StoryTrack =>
    storyTrack(fundamentalOf(id), saidOf(name), over);

/** Tracks of which a verdict of the list is said. */
export const feet = trackOf("foot-line");
export const grip = trackOf("trail-v");
export const hips = trackOf("hip-sway");
