import type { Measured, MeasuredSeason } from "@/lib/verdict/measured";
import type { CalibrationRun } from "./said-table";
import type { ScenarioScore } from "./scenario-score";

/** What pages may quote of a run. */
export function measuredOf(run: CalibrationRun): Measured {
  const of = (kind: MeasuredSeason["kind"], scores: readonly ScenarioScore[]) =>
    scores.map((score): [string, MeasuredSeason] => [
      score.name,
      {
        kind,
        series: score.series,
        falseWord: score.falseWord,
        found: score.found,
        takenBack: score.takenBack,
        level95: score.level.in95,
        share95: score.share.in95,
      },
    ]);
  return {
    date: run.date,
    command: run.command,
    policyVersion: run.policyVersion,
    series: run.promised[0]?.series ?? 0,
    academies: run.academies,
    seasons: Object.fromEntries([
      ...of("promised", run.promised),
      ...of("beyond", run.beyond),
      ...of("changed", run.changed),
    ]),
    lists: run.rosters.map(({ changing, falseDiscoveries, power, studentsTold }) => ({
      changing,
      falseDiscoveries,
      power,
      studentsTold,
    })),
  };
}
