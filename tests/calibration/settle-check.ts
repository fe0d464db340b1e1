import { writeFileSync } from "node:fs";
import path from "node:path";
import { parseArgs } from "node:util";
import { isCalendarDay } from "@/lib/domain/calendar-day";
import type { NoiseModel } from "@/lib/stats/noise-model";
import { POLICY_VERSION } from "@/lib/verdict/policy";
import { learnAcademy } from "./population";
import { scoreStopped } from "./settle-score";
import { settleTable, TRUTHS } from "./settle-table";

const { values } = parseArgs({
  options: {
    tracks: { type: "string", default: "1000" },
    seed: { type: "string", default: "20261126" },
    date: { type: "string" },
  },
});

const { date } = values;
if (date === undefined || !isCalendarDay(date)) throw new RangeError("say the day of the run: --date YYYY-MM-DD");
const [tracks, seed] = [Number(values.tracks), Number(values.seed)];
if (!(Number.isInteger(tracks) && tracks > 0 && Number.isInteger(seed)))
  throw new RangeError(`--tracks and --seed take whole numbers: ${values.tracks}, ${values.seed}`);

const academies = [1, 2, 3, 4, 5].map((nth) => learnAcademy(60, seed + 7919 * nth));
const rows = TRUTHS.flatMap((truth, nth) => {
  const from = performance.now();
  const stopped = Array.from({ length: tracks }, (_, number) =>
    scoreStopped(truth, academies[number % academies.length] as NoiseModel, seed + 104_729 * (nth + 1), number),
  );
  console.error(`${truth.name}: ${((performance.now() - from) / tracks).toFixed(0)} ms a track`);
  return stopped;
});
const page = settleTable(
  {
    date,
    command: `npm run calibrate:plans -- --date ${date} --tracks ${tracks} --seed ${seed}`,
    policyVersion: POLICY_VERSION,
  },
  rows,
);
writeFileSync(path.join(import.meta.dirname, "last-plans.md"), page);
console.log(page);
