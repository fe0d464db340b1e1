import type { NoiseModel } from "@/lib/stats/noise-model";
import { judgeTrack } from "@/lib/verdict/judge-track";
import { noiseAlways } from "@/lib/verdict/noise";
import { POLICY } from "@/lib/verdict/policy";
import { type Scenario, type SimulatedTrack, simulateTrack } from "./population";

/** What the verdicts of one season were worth. */
export interface SeasonScore {
  /** Ever called a change where there is none, or before it, or the wrong way first. */
  readonly falseWord: boolean;
  /** Sessions from the change's first one, itself counted, to the first right word; null: never said. */
  readonly foundAfter: number | null;
  readonly steadyAtEnd: boolean;
  readonly level80: boolean;
  readonly level95: boolean;
  /** Whether the stretch holds the first session of a true step; null: there is none, or none was said. */
  readonly set80: boolean | null;
  readonly set95: boolean | null;
  readonly set80Size: number | null;
}

/** Judges one season as the pages do, look after look, and scores it against its truth. */
export function scoreSeason(simulated: SimulatedTrack, noise: NoiseModel): SeasonScore {
  const { track, changeAt, levels } = simulated;
  const { verdict } = judgeTrack(track, noiseAlways(noise), POLICY, "looks");
  const words = (verdict.looks ?? []).map((look) => look.verdict);
  const first = words.findIndex((word) => word === "gain" || word === "slip");
  const after = changeAt === null ? null : levels[changeAt];
  const right = changeAt === null ? null : (after ?? 0) > (levels[0] as number) ? "gain" : "slip";
  const early = first >= 0 && (changeAt === null || first < changeAt || words[first] !== right);
  const found = changeAt === null ? -1 : words.findIndex((word, i) => i >= changeAt && word === right);
  const truth = levels.at(-1) as number;
  const level = verdict.levelNow;
  const change = verdict.changes[0];
  const isStep = changeAt !== null && levels[changeAt] !== levels[0] && levels[changeAt] === levels[changeAt + 1];
  const within = (set: readonly number[] | null | undefined): boolean | null =>
    isStep && set ? set.includes(changeAt) : null;
  return {
    falseWord: early,
    foundAfter: found < 0 || changeAt === null ? null : found - changeAt + 1,
    steadyAtEnd: words.at(-1) === "steady",
    level80: level !== null && level.low80 <= truth && truth <= level.high80,
    level95: level !== null && level.low95 <= truth && truth <= level.high95,
    set80: within(change?.set80),
    set95: within(change?.set95),
    set80Size: change?.set80?.length ?? null,
  };
}

/** A scenario's line of the table; shares are of all series, those of sets of the steps that were said. */
export interface ScenarioScore {
  readonly name: string;
  readonly series: number;
  readonly falseWord: number;
  readonly found: number;
  readonly within4: number;
  readonly within8: number;
  readonly steadyAtEnd: number;
  readonly level80: number;
  readonly level95: number;
  readonly steps: number;
  readonly set80: number;
  readonly set95: number;
  readonly set80Size: number;
}

function share(count: number, of: number): number {
  return of === 0 ? 0 : count / of;
}

/** Scores a scenario; series take the academies' noise in turn. */
export function scoreScenario(
  scenario: Scenario,
  academies: readonly NoiseModel[],
  series: number,
  seed: number,
): ScenarioScore {
  const scores = Array.from({ length: series }, (_, number) =>
    scoreSeason(simulateTrack(scenario, seed, number), academies[number % academies.length] as NoiseModel),
  );
  const count = (holds: (score: SeasonScore) => boolean): number => share(scores.filter(holds).length, series);
  const steps = scores.filter((score) => score.set80 !== null);
  const sizes = steps.map((score) => score.set80Size as number).sort((a, b) => a - b);
  return {
    name: scenario.name,
    series,
    falseWord: count((score) => score.falseWord),
    found: count((score) => score.foundAfter !== null),
    within4: count((score) => score.foundAfter !== null && score.foundAfter <= 4),
    within8: count((score) => score.foundAfter !== null && score.foundAfter <= 8),
    steadyAtEnd: count((score) => score.steadyAtEnd),
    level80: count((score) => score.level80),
    level95: count((score) => score.level95),
    steps: steps.length,
    set80: share(steps.filter((score) => score.set80).length, steps.length),
    set95: share(steps.filter((score) => score.set95).length, steps.length),
    set80Size: sizes[Math.floor(sizes.length / 2)] ?? 0,
  };
}
