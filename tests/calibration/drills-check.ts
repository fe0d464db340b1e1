import { writeFileSync } from "node:fs";
import path from "node:path";
import { ACADEMIES, STOPPED_ACADEMIES } from "./drills-population";
import { scoreDrills } from "./drills-score";
import { drillsTable } from "./drills-table";
import { runOptions } from "./run-options";
import { scoreStays } from "./stays-score";

const { date, numbers, command } = runOptions("calibrate:drills", { academies: 400, seed: 20261127 });
const rows = ACADEMIES.map((academy, nth) => {
  const from = performance.now();
  const score = scoreDrills(academy, numbers.academies, numbers.seed + 104_729 * (nth + 1));
  console.error(`${academy.name}: ${((performance.now() - from) / numbers.academies).toFixed(0)} ms an academy`);
  return { academy, score };
});
const stays = STOPPED_ACADEMIES.map((academy, nth) => {
  const scores = scoreStays(academy, numbers.academies, numbers.seed + 104_729 * (rows.length + nth + 1));
  console.error(`${academy.name}: done`);
  return { academy, scores };
});
const page = drillsTable({ date, command }, rows, stays);
writeFileSync(path.join(import.meta.dirname, "last-drills.md"), page);
console.log(page);
