import { flat, type LevelPath, relapse, step } from "@/seed/level-path";
import { between, type Random, whole } from "@/seed/random";
import type { SeasonPlan, TrueNoise } from "@/seed/simulate";
import type { Scenario } from "./population";

type Unlike = NonNullable<Scenario["unlike"]>;

const noise = (changed: Partial<TrueNoise>): Unlike => {
  return (plan) => ({ ...plan, noise: { ...plan.noise, ...changed } });
};

const and = (...parts: readonly Unlike[]): Unlike => {
  return (plan, unit, random) => parts.reduce((sofar, part) => part(sofar, unit, random), plan);
};

const rounded = (rounding: number): Unlike => {
  return (plan) => ({ ...plan, rounding });
};

const misread: Unlike = (plan) => ({ ...plan, misreading: { share: 0.02, size: 8 } });

const spike: Unlike = (plan, unit, random) => ({
  ...plan,
  oddSession: { at: Math.floor(between(random, 4, plan.days.length - 4)), by: 4 * unit },
});

/** The phone stands in one place for four to nine sessions, then in another. */
const spots: Unlike = (plan: SeasonPlan, _unit: number, random: Random) => {
  if (plan.camera.kind === "given") return plan;
  const placements: string[] = [];
  for (let spot = 0; placements.length < plan.days.length; spot++) {
    const held = Math.floor(between(random, 4, 10));
    placements.push(...new Array<string>(held).fill(`spot ${spot}`));
  }
  const sds = placements.slice(0, plan.days.length).map(() => 1.5);
  return { ...plan, camera: { kind: "drawn", sds, placements: placements.slice(0, plan.days.length) } };
};

/** Lessons in runs of three to six close days, then a pause. */
const bunched: Unlike = (plan, _unit, random) => {
  const days = [plan.days[0] as number];
  while (days.length < plan.days.length) {
    const run = whole(random, 3, 6);
    for (let i = 1; i < run && days.length < plan.days.length; i++)
      days.push((days.at(-1) as number) + whole(random, 1, 4));
    if (days.length < plan.days.length) days.push((days.at(-1) as number) + whole(random, 20, 45));
  }
  return { ...plan, days };
};

const unchanged = (name: string, unlike?: Unlike, rest: Partial<Scenario> = {}): Scenario => ({
  name,
  sessions: 40,
  path: () => flat(0),
  change: null,
  ...(unlike ? { unlike } : {}),
  ...rest,
});

/** Unchanged seasons within the promise: at most 5 % on average are ever called changed, at most 6 % in each. */
export const PROMISED: readonly Scenario[] = [
  unchanged("flat"),
  unchanged("flat, correlation 0", noise({ correlation: 0 })),
  unchanged("flat, correlation .3", noise({ correlation: 0.3 })),
  unchanged("flat, t4", noise({ tails: "t4" })),
  unchanged("flat, t4, correlation .3", noise({ tails: "t4", correlation: 0.3 })),
  unchanged("flat, rounded to 1", rounded(1)),
  unchanged("flat, rounded to 5", rounded(5)),
  unchanged("flat, 2 % misread", misread),
  unchanged("flat, 2 % misread, correlation .3", and(misread, noise({ correlation: 0.3 }))),
  unchanged("flat, one swing a session", (plan) => ({ ...plan, swingCounts: plan.days.map(() => 1) })),
  unchanged("flat, 12 sessions", undefined, { sessions: 12 }),
  unchanged("one odd session of 4 U", spike),
  unchanged("flat, labelled camera spots", spots, { labelled: "labelled" }),
];

/** Unchanged seasons beyond the promise: what it costs when an assumption fails. */
export const BEYOND: readonly Scenario[] = [
  unchanged("flat, correlation .4", noise({ correlation: 0.4 })),
  unchanged("flat, camera sd stated half", undefined, { stated: 0.5 }),
  unchanged("flat, day sd 4", noise({ daySd: 4 })),
  unchanged("flat, spread x 1.8 from session 20", noise({ spreadChange: { from: 20, factor: 1.8 } })),
  unchanged("flat, camera spots without labels", spots),
  unchanged("flat, correlation by days .3", noise({ correlation: 0.3, neighbour: "ten-days" })),
  unchanged("flat, correlation by days .3, bunched", and(bunched, noise({ correlation: 0.3, neighbour: "ten-days" }))),
  unchanged("flat, a reader's drift of 1 U over the season", undefined, {
    path: () => ({ kind: "ramp", from: 0, to: 1, start: 0, end: 39 }),
  }),
];

const changed = (name: string, path: (at: number) => LevelPath, rest: Partial<Scenario> = {}): Scenario => ({
  name,
  sessions: 20,
  path,
  change: [6, 10],
  ...rest,
});

const rise =
  (size: number) =>
  (at: number): LevelPath =>
    step(0, size, at);

/** Changed seasons; the change's first session is the 7th to the 11th unless the name says otherwise. */
export const CHANGED: readonly Scenario[] = [
  changed("step 1 U", rise(1)),
  changed("step 1.5 U", rise(1.5)),
  changed("step 2 U", rise(2)),
  changed("step 3 U", rise(3)),
  changed("step 2 U, t4", rise(2), { unlike: noise({ tails: "t4" }) }),
  changed("step 2 U, correlation .3", rise(2), { unlike: noise({ correlation: 0.3 }) }),
  changed("step 2 U, rounded to 5", rise(2), { unlike: rounded(5) }),
  changed("step 2 U, 40 sessions", rise(2), { sessions: 40 }),
  changed("step 3 U, 40 sessions", rise(3), { sessions: 40 }),
  changed("step 1 U, 40 sessions, from the 17th", rise(1), { sessions: 40, change: [16, 16] }),
  changed("ramp to 3 U over 8 sessions", (at) => ({ kind: "ramp", from: 0, to: 3, start: at - 1, end: at + 7 })),
  changed("ramp to 2 U over 8 sessions", (at) => ({ kind: "ramp", from: 0, to: 2, start: at - 1, end: at + 7 })),
  changed("line to 3 U over the season", () => ({ kind: "ramp", from: 0, to: 3, start: 0, end: 19 }), {
    change: [1, 1],
  }),
  changed("curve to 3 U", (at) => ({ kind: "exponential", from: 0, to: 3, start: at - 1, scale: 3 })),
  changed("curve to 2 U", (at) => ({ kind: "exponential", from: 0, to: 2, start: at - 1, scale: 3 })),
  changed("relapse after 6 sessions, 2.5 U, 30 sessions", (at) => relapse(0, 2.5, at, 0, at + 6), { sessions: 30 }),
];
