import { dayNumber } from "@/lib/domain/calendar-day";
import type { NoiseModel } from "@/lib/stats/noise-model";
import { judgeTrack } from "@/lib/verdict/judge-track";
import { noiseAlways } from "@/lib/verdict/noise";
import { POLICY } from "@/lib/verdict/policy";
import { type ListedLook, rosterList } from "@/lib/verdict/roster-list";
import { flat, type LevelPath, step } from "@/seed/level-path";
import { oneOf, randomFrom } from "@/seed/random";
import { type Scenario, simulateTrack } from "./population";
import { WITHOUT_PLANS } from "./season-score";

/** Students and fundamentals of a simulated academy. */
const ACADEMY = { students: 60, fundamentals: 8, sessions: 20 };

/** What the roster's list was worth over one season. */
export interface RosterScore {
  readonly changing: number;
  readonly rosters: number;
  /** Share of the listed that were listed before any change, or without one; mean over academies, 0 where none is listed. */
  readonly falseDiscoveries: number;
  /** Standard errors over academies of that share and of the next. */
  readonly errors: { readonly falseDiscoveries: number; readonly power: number };
  /** Share of the changing tracks that are listed once they have changed. */
  readonly power: number;
  /** Share of students with a false listing. */
  readonly studentsTold: number;
}

function shape(kind: string, size: number, at: number): LevelPath {
  if (kind === "step") return step(0, size, at);
  if (kind === "ramp") return { kind: "ramp", from: 0, to: size, start: at - 1, end: at + 5 };
  return { kind: "exponential", from: 0, to: size, start: at - 1, scale: 3 };
}

function scenarioOf(changes: boolean, seed: number, number: number): Scenario {
  const random = randomFrom(seed, 5_000_000 + number);
  const size = oneOf(random, [1, 1.5, 2, 3]) * oneOf(random, [-1, 1]);
  const kind = oneOf(random, ["step", "ramp", "curve"]);
  return {
    name: "roster",
    sessions: ACADEMY.sessions,
    path: (at) => (changes ? shape(kind, size, at) : flat(0)),
    change: [5, 13],
  };
}

interface Tallied {
  readonly looks: readonly ListedLook[];
  /** Day number of the change's first session; null: it never changes. */
  readonly changedOn: number | null;
}

function tallyTrack(changes: boolean, noise: NoiseModel, seed: number, number: number): Tallied {
  const simulated = simulateTrack(scenarioOf(changes, seed, number), seed, number);
  const { listedLooks } = judgeTrack(simulated.track, noiseAlways(noise), WITHOUT_PLANS, "looks");
  const at = simulated.changeAt;
  const session = at === null ? undefined : simulated.track.sessions[at];
  return { looks: listedLooks, changedOn: changes && session ? dayNumber(session.date) : null };
}

/** Lists simulated academies over a season at the list's own rate and counts what it holds; the learned models take turns. */
export function scoreRosters(
  changing: number,
  models: readonly NoiseModel[],
  rosters: number,
  seed: number,
): RosterScore {
  const discoveries: number[] = [];
  const powers: number[] = [];
  const told: number[] = [];
  for (let roster = 0; roster < rosters; roster++) {
    const count = ACADEMY.students * ACADEMY.fundamentals;
    const random = randomFrom(seed, 6_000_000 + roster);
    const noise = models[roster % models.length] as NoiseModel;
    const tracks = Array.from({ length: count }, (_, i) =>
      tallyTrack(random.uniform() < changing, noise, seed + 1 + roster, i),
    );
    const { looks } = rosterList(
      tracks.map((track) => track.looks),
      POLICY.listShare,
      POLICY,
    );
    const wrong = tracks.map(({ looks: own, changedOn }, t) =>
      own.some((look, i) => looks[t]?.[i] === true && (changedOn === null || look.day < changedOn)),
    );
    const right = tracks.map(({ looks: own, changedOn }, t) =>
      own.some((look, i) => looks[t]?.[i] === true && changedOn !== null && look.day >= changedOn),
    );
    const listed = wrong.filter((is, t) => is || right[t]).length;
    discoveries.push(listed === 0 ? 0 : wrong.filter(Boolean).length / listed);
    powers.push(right.filter(Boolean).length / Math.max(1, tracks.filter((track) => track.changedOn !== null).length));
    const families = Array.from({ length: ACADEMY.students }, (_, s) =>
      wrong.slice(s * ACADEMY.fundamentals, (s + 1) * ACADEMY.fundamentals).some(Boolean),
    );
    told.push(families.filter(Boolean).length / families.length);
  }
  const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;
  const error = (values: readonly number[]): number => {
    const centre = mean(values);
    const squares = values.reduce((sum, value) => sum + (value - centre) ** 2, 0);
    return Math.sqrt(squares / Math.max(1, values.length - 1) / values.length);
  };
  return {
    changing,
    rosters,
    errors: { falseDiscoveries: error(discoveries), power: error(powers) },
    falseDiscoveries: mean(discoveries),
    power: mean(powers),
    studentsTold: mean(told),
  };
}
