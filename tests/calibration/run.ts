import { fork } from "node:child_process";
import { readFileSync, writeFileSync } from "node:fs";
import { availableParallelism } from "node:os";
import path from "node:path";
import { parseArgs } from "node:util";
import { isCalendarDay } from "@/lib/domain/calendar-day";
import { POLICY, POLICY_VERSION } from "@/lib/verdict/policy";
import { measuredOf } from "./measured-of";
import type { RosterScore } from "./roster-score";
import { type CalibrationRun, saidTable } from "./said-table";
import type { ScenarioScore } from "./scenario-score";
import { BEYOND, PROMISED } from "./scenarios";
import { type RunPlan, SEASON_TASKS, TASKS } from "./score-task";

const { values } = parseArgs({
  options: {
    series: { type: "string", default: "300" },
    rosters: { type: "string", default: "4" },
    academies: { type: "string", default: "5" },
    seed: { type: "string", default: "20260912" },
    workers: { type: "string", default: String(availableParallelism()) },
    date: { type: "string" },
    "from-last": { type: "boolean", default: false },
    "rosters-only": { type: "boolean", default: false },
  },
});

function wholeNumber(text: string | undefined, name: string): number {
  const number = Number(text);
  if (!Number.isInteger(number) || number < 1) throw new RangeError(`--${name} must be a whole number from 1: ${text}`);
  return number;
}

/** Works the tasks from `first` on out on as many processes as asked for, each taking the next task when it is done with one. */
function scoreAll(plan: RunPlan, workers: number, first: number): Promise<readonly (ScenarioScore | RosterScore)[]> {
  return new Promise((resolve, reject) => {
    const scores: (ScenarioScore | RosterScore)[] = [];
    let next = first;
    let done = first;
    const file = path.join(import.meta.dirname, "score-task.ts");
    const env = { ...process.env, CALIBRATION_PLAN: JSON.stringify(plan) };
    for (let worker = 0; worker < Math.min(workers, TASKS - first); worker++) {
      const child = fork(file, { execArgv: ["--import", "tsx"], env });
      const hand = (): unknown => (next < TASKS ? child.send(next++) : child.disconnect());
      child.on("message", ({ task, score }: { task: number; score: ScenarioScore | RosterScore }) => {
        scores[task - first] = score;
        done += 1;
        console.error(`${done} of ${TASKS}: ${"name" in score ? score.name : `roster, ${score.changing}`}`);
        if (done === TASKS) resolve(scores);
        hand();
      });
      child.on("exit", (code) => (code === 0 ? undefined : reject(new Error(`a worker ended with ${code}`))));
      hand();
    }
  });
}

const here = (name: string): string => path.join(import.meta.dirname, name);

function lastRun(): CalibrationRun {
  return JSON.parse(readFileSync(here("last-run.json"), "utf8")) as CalibrationRun;
}

/**
 * The run that was asked for; `--rosters-only` scores the lists alone, where the last run under the same policy and seed
 * has scored the seasons already.
 */
async function calibrate(): Promise<CalibrationRun> {
  const { date } = values;
  if (date === undefined || !isCalendarDay(date)) throw new RangeError("say the day of the run: --date YYYY-MM-DD");
  const series = wholeNumber(values.series, "series");
  const rosters = wholeNumber(values.rosters, "rosters");
  const academies = wholeNumber(values.academies, "academies");
  const seed = wholeNumber(values.seed, "seed");
  const plan = { series, rosters, academies, seed };
  const workers = wholeNumber(values.workers, "workers");
  const facts = {
    date,
    command: `npm run calibrate -- --date ${date} --series ${series} --rosters ${rosters} --academies ${academies} --seed ${seed}`,
    policyVersion: POLICY_VERSION,
    limit: POLICY.limit,
    listCaution: POLICY.listCaution,
    seed,
    academies,
  };
  if (values["rosters-only"]) {
    const last = lastRun();
    if (last.policyVersion !== POLICY_VERSION || last.seed !== seed || last.academies !== academies)
      throw new RangeError("--rosters-only goes on from a last run of the same policy, seed and academies");
    return { ...last, ...facts, rosters: (await scoreAll(plan, workers, SEASON_TASKS)) as readonly RosterScore[] };
  }
  const scores = await scoreAll(plan, workers, 0);
  const scenarios = scores.filter((score): score is ScenarioScore => "name" in score);
  return {
    ...facts,
    promised: scenarios.slice(0, PROMISED.length),
    beyond: scenarios.slice(PROMISED.length, PROMISED.length + BEYOND.length),
    changed: scenarios.slice(PROMISED.length + BEYOND.length),
    rosters: scores.filter((score): score is RosterScore => !("name" in score)),
  };
}

async function main(): Promise<void> {
  const run = values["from-last"] ? lastRun() : await calibrate();
  writeFileSync(here("last-run.json"), `${JSON.stringify(run, null, 2)}\n`);
  writeFileSync(here("last-run.md"), saidTable(run));
  writeFileSync(here("../../lib/verdict/measured.json"), `${JSON.stringify(measuredOf(run), null, 2)}\n`);
  console.log(saidTable(run));
}

void main();
