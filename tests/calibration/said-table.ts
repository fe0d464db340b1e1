import type { RosterScore } from "./roster-score";
import type { ScenarioScore } from "./scenario-score";

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

function row(cells: readonly (string | number)[]): string {
  return `| ${cells.join(" | ")} |`;
}

function head(cells: readonly string[]): string {
  return `${row(cells)}\n|${"---|".repeat(cells.length)}`;
}

const LEVEL = [
  "level now in 80",
  "level now in 95",
  "width 95, U",
  "share inside in 80",
  "share inside in 95",
  "width 95",
];

function coverageCells({ level, share }: ScenarioScore): string[] {
  return [
    withError(level.in80, level.series),
    withError(level.in95, level.series),
    level.width95.toFixed(2),
    withError(share.in80, share.series),
    withError(share.in95, share.series),
    share.series === 0 ? "-" : share.width95.toFixed(2),
  ];
}

function unchangedTable(scores: readonly ScenarioScore[]): string {
  const rows = scores.map((score) => {
    const shares = [score.falseWord, score.steadyBy12, score.steadyBy20, score.steadyAtEnd];
    return row([score.name, ...shares.map((each) => withError(each, score.series)), ...coverageCells(score)]);
  });
  const names = ["scenario", "false word", "holding by 12", "by 20", "at the end", ...LEVEL];
  return [head(names), ...rows].join("\n");
}

function changedTable(scores: readonly ScenarioScore[]): string {
  const rows = scores.map((score) => {
    const shares = [score.found, score.within4, score.within8, score.falseWord];
    return row([
      score.name,
      ...shares.map((each) => withError(each, score.series)),
      withError(score.takenBack, Math.round(score.found * score.series)),
      withError(score.lossSeen, score.losses),
      withError(score.steadyWrong, score.series),
      ...coverageCells(score),
    ]);
  });
  const names = [
    "scenario",
    "found",
    "within 4",
    "within 8",
    "false word",
    "taken back",
    "loss seen",
    "wrongly holding",
  ];
  return [head([...names, ...LEVEL]), ...rows].join("\n");
}

function stretchTable(scores: readonly ScenarioScore[]): string {
  const rows = scores
    .filter((score) => score.steps > 0)
    .map((score) =>
      row([
        score.name,
        score.steps,
        withError(score.set80, score.steps),
        withError(score.set95, score.steps),
        score.set80Size,
      ]),
    );
  return [head(["scenario", "steps said", "set 80 holds", "set 95 holds", "set 80 size"]), ...rows].join("\n");
}

function trendTable(scores: readonly ScenarioScore[]): string {
  const rows = scores.flatMap((score) =>
    score.trends.map(({ sessions, covers, width, series }) =>
      row([score.name, sessions, withError(covers, series), width.toFixed(2)]),
    ),
  );
  return [head(["scenario", "sessions", "trend in 95", "width, U per 100 days"]), ...rows].join("\n");
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
Holding: ever said by session 12 and 20, and at the end.

${unchangedTable(run.promised)}

Beyond the promise:

${unchangedTable(run.beyond)}

## Changed seasons

Found: the right word by the last session; within 4 and 8 sessions of the change's first; false word: before the change or the wrong way first. Taken back: of
those found, the word left at a later look while the change held. Loss seen: of those that lost it again after the word, another word at the end. Wrongly
holding: ever said while the level was off its old place by 1.5 U or more.

${changedTable(run.changed)}

Of the true steps that were said, so of the clearer ones: whether the stretch holds the first session, and its median size.

${stretchTable(run.changed)}

## The trend of unchanged seasons

${trendTable([...run.promised, ...run.beyond])}

## The roster's list over a season, 60 students x 8 fundamentals

| share changing | academies | false discoveries | found | students with a false listing |
|---|---|---|---|---|
${run.rosters
  .map(
    (score) =>
      `| ${[score.changing, score.rosters, plusMinus(score.falseDiscoveries, score.errors.falseDiscoveries), plusMinus(score.power, score.errors.power), score.studentsTold.toFixed(4)].join(" | ")} |`,
  )
  .join("\n")}
`;
}

function plusMinus(value: number, error: number): string {
  return `${value.toFixed(3)} ± ${error.toFixed(3)}`;
}
