import type { RosterScore } from "./roster-score";
import type { ScenarioScore } from "./season-score";

/** What a run was, so that it can be repeated to the digit. */
export interface CalibrationRun {
  readonly date: string;
  readonly command: string;
  readonly policyVersion: string;
  readonly limit: number;
  readonly listCaution: number;
  readonly seed: number;
  readonly academies: number;
  readonly promised: readonly ScenarioScore[];
  readonly beyond: readonly ScenarioScore[];
  readonly changed: readonly ScenarioScore[];
  readonly rosters: readonly RosterScore[];
}

function withError(value: number, count: number): string {
  return count === 0 ? "-" : `${value.toFixed(3)} ± ${Math.sqrt((value * (1 - value)) / count).toFixed(3)}`;
}

function unchangedRows(scores: readonly ScenarioScore[]): string {
  return scores
    .map((score) => {
      const cells = [score.falseWord, score.steadyAtEnd, score.level80, score.level95];
      return `| ${[score.name, ...cells.map((cell) => withError(cell, score.series))].join(" | ")} |`;
    })
    .join("\n");
}

function changedRows(scores: readonly ScenarioScore[]): string {
  return scores
    .map((score) => {
      const shares = [score.found, score.within4, score.within8, score.falseWord, score.level80, score.level95];
      const sets = [
        withError(score.set80, score.steps),
        withError(score.set95, score.steps),
        score.steps === 0 ? "-" : String(score.set80Size),
      ];
      return `| ${[score.name, ...shares.map((cell) => withError(cell, score.series)), ...sets].join(" | ")} |`;
    })
    .join("\n");
}

/** The run as a page to read: one table for unchanged seasons, one for changed ones, one for the roster's list. */
export function saidTable(run: CalibrationRun): string {
  const mean = run.promised.reduce((sum, score) => sum + score.falseWord, 0) / run.promised.length;
  const largest = Math.max(...run.promised.map((score) => score.falseWord));
  return `# Calibration of ${run.date}

\`${run.command}\`

Policy ${run.policyVersion}, limit ${run.limit}, caution of the list ${run.listCaution}, seed ${run.seed}; noise learned from ${run.academies} simulated academies of 60
students, two in five of them changing. ± is one standard error of the simulation. Simulator and engine share one family of models, which favours the engine.

## Unchanged seasons, a look after every session

False word: gain or slip ever said. Within the promise: mean ${mean.toFixed(3)} (aim .050), largest ${largest.toFixed(3)} (aim .060).

| scenario | false word | holding at the end | level now in 80 | level now in 95 |
|---|---|---|---|---|
${unchangedRows(run.promised)}

Beyond the promise:

| scenario | false word | holding at the end | level now in 80 | level now in 95 |
|---|---|---|---|---|
${unchangedRows(run.beyond)}

## Changed seasons

Found: the right word by the last session; within 4 and 8 sessions of the change's first; false word: before the change or the wrong way first. The last three
columns are of the true steps that were said, so of the clearer ones: whether the stretch holds the first session, and its median size.

| scenario | found | within 4 | within 8 | false word | level now in 80 | level now in 95 | set 80 holds | set 95 holds | set 80 size |
|---|---|---|---|---|---|---|---|---|---|
${changedRows(run.changed)}

## The roster's list over a season, 60 students x 8 fundamentals

| share changing | academies | false discoveries | found | students with a false listing |
|---|---|---|---|---|
${run.rosters
  .map(
    (score) =>
      `| ${[score.changing, score.rosters, score.falseDiscoveries.toFixed(3), score.power.toFixed(3), score.studentsTold.toFixed(4)].join(" | ")} |`,
  )
  .join("\n")}
`;
}
