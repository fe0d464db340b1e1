import type { NoiseModel } from "@/lib/stats/noise-model";
import { type Scenario, simulateTrack } from "./population";
import { type Covered, type SeasonScore, scoreSeason, TREND_SESSIONS } from "./season-score";

/** Coverage of an interval over a scenario, and its median width. */
export interface Coverage {
  readonly series: number;
  readonly in80: number;
  readonly in95: number;
  readonly width95: number;
}

/** A scenario's line of the table; shares are of all series unless said otherwise. */
export interface ScenarioScore {
  readonly name: string;
  readonly series: number;
  readonly falseWord: number;
  readonly found: number;
  readonly within4: number;
  readonly within8: number;
  /** Of the series that were found. */
  readonly takenBack: number;
  /** Of the series that lost what had been found, and how many those are. */
  readonly lossSeen: number;
  readonly losses: number;
  readonly steadyAtEnd: number;
  readonly steadyBy12: number;
  readonly steadyBy20: number;
  readonly steadyWrong: number;
  readonly level: Coverage;
  readonly share: Coverage;
  /** Of the true steps that were said: how many, whether the stretch holds the first session, its median size. */
  readonly steps: number;
  readonly set80: number;
  readonly set95: number;
  readonly set80Size: number;
  readonly trends: readonly {
    readonly sessions: number;
    readonly series: number;
    readonly covers: number;
    readonly width: number;
  }[];
}

function share(count: number, of: number): number {
  return of === 0 ? 0 : count / of;
}

function middle(values: readonly number[]): number {
  return [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)] ?? 0;
}

function coverage(found: readonly (Covered | null)[]): Coverage {
  const scores = found.filter((each) => each !== null);
  return {
    series: scores.length,
    in80: share(scores.filter((each) => each.in80).length, scores.length),
    in95: share(scores.filter((each) => each.in95).length, scores.length),
    width95: middle(scores.map((each) => each.width95)),
  };
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
  const found = scores.filter((score) => score.foundAfter !== null);
  const lost = scores.filter((score) => score.lossSeen !== null);
  const steps = scores.flatMap((score) => score.stretch ?? []);
  return {
    name: scenario.name,
    series,
    falseWord: count((score) => score.falseWord),
    found: share(found.length, series),
    within4: count((score) => score.foundAfter !== null && score.foundAfter <= 4),
    within8: count((score) => score.foundAfter !== null && score.foundAfter <= 8),
    takenBack: share(found.filter((score) => score.takenBack).length, found.length),
    lossSeen: share(lost.filter((score) => score.lossSeen).length, lost.length),
    losses: lost.length,
    steadyAtEnd: count((score) => score.steadyAtEnd),
    steadyBy12: count((score) => score.steadyBy12),
    steadyBy20: count((score) => score.steadyBy20),
    steadyWrong: count((score) => score.steadyWrong),
    level: coverage(scores.map((score) => score.level)),
    share: coverage(scores.map((score) => score.share)),
    steps: steps.length,
    set80: share(steps.filter((step) => step.holds80).length, steps.length),
    set95: share(steps.filter((step) => step.holds95).length, steps.length),
    set80Size: middle(steps.map((step) => step.size80)),
    trends: TREND_SESSIONS.flatMap((sessions) => {
      const trends = scores.flatMap((score) => score.trends.filter((each) => each.sessions === sessions));
      if (trends.length === 0) return [];
      return [
        {
          sessions,
          series: trends.length,
          covers: share(trends.filter((each) => each.covers).length, trends.length),
          width: middle(trends.map((each) => each.width)),
        },
      ];
    }),
  };
}
