import { writeFileSync } from "node:fs";
import path from "node:path";
import { parseArgs } from "node:util";
import { isCalendarDay } from "@/lib/domain/calendar-day";
import type { NoiseModel } from "@/lib/stats/noise-model";
import { POLICY_VERSION } from "@/lib/verdict/policy";
import { learnAcademy } from "./population";
import { scoreReach } from "./reach-score";
import { NEARING, NEVER, reachTable } from "./reach-table";

const { values } = parseArgs({
  options: {
    tracks: { type: "string", default: "6000" },
    seed: { type: "string", default: "20261128" },
    date: { type: "string" },
  },
});

const { date } = values;
if (date === undefined || !isCalendarDay(date)) throw new RangeError("say the day of the run: --date YYYY-MM-DD");
const [tracks, seed] = [Number(values.tracks), Number(values.seed)];
if (!(Number.isInteger(tracks) && tracks > 0 && Number.isInteger(seed)))
  throw new RangeError(`--tracks and --seed take whole numbers: ${values.tracks}, ${values.seed}`);

const academies = [1, 2, 3].map((nth) => learnAcademy(60, seed + 7919 * nth));
const scores = [...NEARING, ...NEVER].flatMap((truth, nth) => {
  const from = performance.now();
  // Of tracks that never reach the band fewer are needed: there is nothing to cover.
  const count = NEVER.includes(truth) ? Math.ceil(tracks / 4) : tracks;
  const scored = Array.from({ length: count }, (_, number) =>
    scoreReach(truth, academies[number % academies.length] as NoiseModel, seed + 104_729 * (nth + 1), number),
  );
  console.error(`${truth.name}: ${((performance.now() - from) / count).toFixed(0)} ms a track`);
  return scored;
});
const page = reachTable(
  {
    date,
    seed,
    command: `npm run calibrate:reach -- --date ${date} --tracks ${tracks} --seed ${seed}`,
    policyVersion: POLICY_VERSION,
  },
  scores,
);
writeFileSync(path.join(import.meta.dirname, "last-reach.md"), page);
console.log(page);
