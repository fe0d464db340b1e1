import { writeFileSync } from "node:fs";
import path from "node:path";
import { parseArgs } from "node:util";
import { isCalendarDay } from "@/lib/domain/calendar-day";
import type { NoiseModel } from "@/lib/stats/noise-model";
import { POLICY_VERSION } from "@/lib/verdict/policy";
import { learnAcademy } from "./population";
import { type OwnedSeason, watchSeason } from "./watch-score";
import { LOSSES, UNCHANGED, UNLIKE, type WatchedRow, watchTable } from "./watch-table";

const { values } = parseArgs({
  options: {
    seasons: { type: "string", default: "3000" },
    losses: { type: "string", default: "1500" },
    seed: { type: "string", default: "20261128" },
    date: { type: "string" },
  },
});

const { date } = values;
if (date === undefined || !isCalendarDay(date)) throw new RangeError("say the day of the run: --date YYYY-MM-DD");
const [seasons, losses, seed] = [Number(values.seasons), Number(values.losses), Number(values.seed)];
if (![seasons, losses, seed].every((number) => Number.isInteger(number) && number > 0))
  throw new RangeError(
    `--seasons, --losses and --seed take whole numbers from 1: ${values.seasons}, ${values.losses}, ${values.seed}`,
  );

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
    command: `npm run calibrate:watch -- --date ${date} --seasons ${seasons} --losses ${losses} --seed ${seed}`,
    policyVersion: POLICY_VERSION,
    seed,
  },
  rows,
);
writeFileSync(path.join(import.meta.dirname, "last-watch.md"), page);
console.log(page);
