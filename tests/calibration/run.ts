import { writeFileSync } from "node:fs";
import path from "node:path";
import { parseArgs } from "node:util";
import { isCalendarDay } from "@/lib/domain/calendar-day";
import { POLICY, POLICY_VERSION } from "@/lib/verdict/policy";
import { learnAcademy } from "./population";
import { scoreRosters } from "./roster-score";
import { type CalibrationRun, saidTable } from "./said-table";
import { BEYOND, CHANGED, PROMISED } from "./scenarios";
import { type ScenarioScore, scoreScenario } from "./season-score";

const { values } = parseArgs({
  options: {
    series: { type: "string", default: "300" },
    rosters: { type: "string", default: "4" },
    academies: { type: "string", default: "5" },
    seed: { type: "string", default: "20260912" },
    date: { type: "string" },
  },
});

function wholeNumber(text: string | undefined, name: string): number {
  const number = Number(text);
  if (!Number.isInteger(number) || number < 1) throw new RangeError(`--${name} must be a whole number from 1: ${text}`);
  return number;
}

function calibrate(): CalibrationRun {
  const { date } = values;
  if (date === undefined || !isCalendarDay(date)) throw new RangeError("say the day of the run: --date YYYY-MM-DD");
  const series = wholeNumber(values.series, "series");
  const rosters = wholeNumber(values.rosters, "rosters");
  const count = wholeNumber(values.academies, "academies");
  const seed = wholeNumber(values.seed, "seed");
  const academies = Array.from({ length: count }, (_, i) => learnAcademy(60, seed + 7919 * (i + 1)));
  let number = 0;
  const score = (scenario: (typeof PROMISED)[number]): ScenarioScore => {
    const from = performance.now();
    number += 1;
    const scored = scoreScenario(scenario, academies, series, seed + 104_729 * number);
    const each = (performance.now() - from) / series;
    console.error(
      `${scenario.name}: false ${scored.falseWord.toFixed(3)}, found ${scored.found.toFixed(3)}, ${each.toFixed(0)} ms a season`,
    );
    return scored;
  };
  return {
    date,
    command: `npm run calibrate -- --date ${date} --series ${series} --rosters ${rosters} --academies ${count} --seed ${seed}`,
    policyVersion: POLICY_VERSION,
    limit: POLICY.limit,
    listCaution: POLICY.listCaution,
    seed,
    academies: count,
    promised: PROMISED.map(score),
    beyond: BEYOND.map(score),
    changed: CHANGED.map(score),
    rosters: [0, 0.05, 0.15, 0.4].map((changing, i) => {
      const noise = academies[i % academies.length];
      if (noise === undefined) throw new RangeError("no academy to learn from");
      const scored = scoreRosters(changing, noise, rosters, seed + 15_485_863 * (i + 1));
      console.error(
        `roster, ${changing}: false ${scored.falseDiscoveries.toFixed(3)}, found ${scored.power.toFixed(3)}`,
      );
      return scored;
    }),
  };
}

const run = calibrate();
writeFileSync(path.join(import.meta.dirname, "last-run.json"), `${JSON.stringify(run, null, 2)}\n`);
writeFileSync(path.join(import.meta.dirname, "last-run.md"), saidTable(run));
console.log(saidTable(run));
