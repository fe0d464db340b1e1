import { writeFileSync } from "node:fs";
import path from "node:path";
import type { NoiseModel } from "@/lib/stats/noise-model";
import { POLICY_VERSION } from "@/lib/verdict/policy";
import { learnAcademy } from "./population";
import { runOptions } from "./run-options";
import { scoreStopped } from "./settle-score";
import { settleTable, TRUTHS } from "./settle-table";

const { date, numbers, command } = runOptions("calibrate:plans", { tracks: 1000, seed: 20261126 });
const { tracks, seed } = numbers;

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
    command,
    policyVersion: POLICY_VERSION,
  },
  rows,
);
writeFileSync(path.join(import.meta.dirname, "last-plans.md"), page);
console.log(page);
