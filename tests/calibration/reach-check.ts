import { writeFileSync } from "node:fs";
import path from "node:path";
import type { NoiseModel } from "@/lib/stats/noise-model";
import { POLICY_VERSION } from "@/lib/verdict/policy";
import { learnAcademy } from "./population";
import { scoreReach } from "./reach-score";
import { NEARING, NEVER, reachTable } from "./reach-table";
import { runOptions } from "./run-options";

const { date, numbers, command } = runOptions("calibrate:reach", { tracks: 6000, seed: 20261128 });
const { tracks, seed } = numbers;

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
    command,
    policyVersion: POLICY_VERSION,
  },
  scores,
);
writeFileSync(path.join(import.meta.dirname, "last-reach.md"), page);
console.log(page);
