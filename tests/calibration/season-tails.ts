import { parseArgs } from "node:util";
import { evidence } from "@/lib/stats/evidence";
import type { NoiseModel } from "@/lib/stats/noise-model";
import { judgedSeries, stretchOf } from "@/lib/verdict/judged-series";
import { limitRiseAt } from "@/lib/verdict/limit-at";
import { POLICY } from "@/lib/verdict/policy";
import { learnAcademy, simulateTrack } from "./population";
import { PROMISED } from "./scenarios";

const { values } = parseArgs({
  options: { series: { type: "string", default: "200" }, seed: { type: "string", default: "1" } },
});
const series = Number(values.series);
const seed = Number(values.seed);
const academies = [0, 1, 2, 3, 4].map((i) => learnAcademy(60, seed + 7919 * (i + 1)));

/** What two looks in a row bear out at each look of an unchanged season, less what the look asks beyond the limit. */
function borneOut(scenario: (typeof PROMISED)[number], s: number, number: number): readonly number[] {
  const { track } = simulateTrack(scenario, seed + 104_729 * (s + 1), number);
  const { series: whole } = judgedSeries(track, POLICY);
  const noise = academies[number % academies.length] as NoiseModel;
  let before = Number.NEGATIVE_INFINITY;
  return whole.groups.map((_, last) => {
    const look = evidence(stretchOf(whole, 0, last), noise);
    const beyond = (look.kind === "ok" ? look.value.logBayesFactor : 0) - limitRiseAt(last + 1, POLICY);
    const both = Math.min(before, beyond);
    before = beyond;
    return both;
  });
}

const seasons = PROMISED.filter((scenario) => scenario.sessions === 40).flatMap((scenario, s) =>
  Array.from({ length: series }, (_, number) => borneOut(scenario, s, number)),
);
console.log(`Unchanged seasons: ${seasons.length}, seed ${seed}`);
for (const looks of [6, 12, 20, 40]) {
  const largest = seasons.map((season) => Math.max(...season.slice(0, looks))).sort((a, b) => a - b);
  const tenth = largest[Math.floor(0.9 * largest.length)] as number;
  const beyond = largest.filter((value) => value > tenth).map((value) => value - tenth);
  const slope = beyond.length / beyond.reduce((sum, value) => sum + value, 0);
  const above = (share: number): string => (largest[Math.floor((1 - share) * largest.length)] as number).toFixed(2);
  console.log(
    `${looks} looks: tenth ${tenth.toFixed(2)}, slope ${slope.toFixed(2)}; above .05 ${above(0.05)}, .01 ${above(0.01)}, .002 ${above(0.002)}`,
  );
}
