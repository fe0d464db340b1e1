import { writeFileSync } from "node:fs";
import path from "node:path";
import type { NoiseModel } from "@/lib/stats/noise-model";
import { POLICY_VERSION } from "@/lib/verdict/policy";
import { learnAcademy } from "./population";
import { runOptions } from "./run-options";
import { type OwnedSeason, watchSeason } from "./watch-score";
import { LOSSES, UNCHANGED, UNLIKE, type WatchedRow, watchTable } from "./watch-table";

const { date, numbers, command } = runOptions("calibrate:watch", { seasons: 3000, losses: 1500, seed: 20261128 });
const { seasons, losses, seed } = numbers;

const academies = [1, 2, 3, 4, 5].map((nth) => learnAcademy(60, seed + 7919 * nth));
const plan: readonly (readonly [OwnedSeason, number])[] = [
  ...LOSSES.map((season) => [season, losses] as const),
  ...UNCHANGED.map((season) => [season, seasons] as const),
  ...UNLIKE.map((season) => [season, Math.ceil(seasons / 4)] as const),
];
const rows = plan.map(([season, count], nth): WatchedRow => {
  const from = performance.now();
  const watched = Array.from({ length: count }, (_, number) =>
    watchSeason(season, academies[number % academies.length] as NoiseModel, seed + 104_729 * (nth + 1), number),
  );
  console.error(`${season.name}: ${((performance.now() - from) / count).toFixed(0)} ms a season`);
  return { season, seasons: watched };
});
const page = watchTable(
  {
    date,
    command,
    policyVersion: POLICY_VERSION,
    seed,
  },
  rows,
);
writeFileSync(path.join(import.meta.dirname, "last-watch.md"), page);
console.log(page);
