import { learnAcademy } from "./population";
import { type RosterScore, scoreRosters } from "./roster-score";
import { type ScenarioScore, scoreScenario } from "./scenario-score";
import { BEYOND, CHANGED, PROMISED } from "./scenarios";

/** What a run is asked for. */
export interface RunPlan {
  readonly series: number;
  readonly rosters: number;
  readonly academies: number;
  readonly seed: number;
}

/** Shares of tracks that truly change in the academies whose list is scored. */
export const CHANGING = [0, 0.05, 0.15, 0.4] as const;

const SCENARIOS = [...PROMISED, ...BEYOND, ...CHANGED];

/** Tasks of a run that score seasons, one a scenario; they come first. */
export const SEASON_TASKS = SCENARIOS.length;

/** How many tasks a run has: then one a share of tracks that change. */
export const TASKS = SEASON_TASKS + CHANGING.length;

/** Scores one task of a run; the answer depends on the plan and the task's number alone, not on who works it out. */
export function scoreTask(plan: RunPlan, task: number): ScenarioScore | RosterScore {
  const { seed } = plan;
  const academies = Array.from({ length: plan.academies }, (_, i) => learnAcademy(60, seed + 7919 * (i + 1)));
  const scenario = SCENARIOS[task];
  if (scenario !== undefined) return scoreScenario(scenario, academies, plan.series, seed + 104_729 * (task + 1));
  const i = task - SCENARIOS.length;
  const changing = CHANGING[i];
  if (changing === undefined) throw new RangeError(`no such task: ${task}`);
  return scoreRosters(changing, academies, plan.rosters, seed + 15_485_863 * (i + 1));
}

// As a worker: one task a message, one answer a task.
const plan = process.env.CALIBRATION_PLAN;
if (process.send !== undefined && plan !== undefined) {
  const asked = JSON.parse(plan) as RunPlan;
  process.on("message", (task: number) => process.send?.({ task, score: scoreTask(asked, task) }));
}
