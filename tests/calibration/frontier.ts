import { parseArgs } from "node:util";
import { evidence } from "@/lib/stats/evidence";
import { fitNoiseModel } from "@/lib/stats/fit-noise-model";
import { NOISE_GRID, type NoiseGrid } from "@/lib/stats/noise-grid";
import type { NoiseModel } from "@/lib/stats/noise-model";
import { judgedSeries, stretchOf } from "@/lib/verdict/judged-series";
import { limitRiseAt } from "@/lib/verdict/limit-at";
import { POLICY } from "@/lib/verdict/policy";
import { academyPool, type Scenario, simulateTrack } from "./population";
import { BEYOND, CHANGED, PROMISED } from "./scenarios";

const { values } = parseArgs({
  options: {
    series: { type: "string", default: "200" },
    seed: { type: "string", default: "1" },
    forms: { type: "string", default: "base,all" },
    part: { type: "string", default: "0/1" },
    shape: { type: "string", default: "policy" },
  },
});

export const LIMITS = [2, 2.25, 2.5, 2.75, 3, 3.25, 3.5, 4] as const;

const BASE: NoiseGrid = {
  multiples: [0.1, 0.4, 0.7, 1, 1.4, 1.8, 2.3, 3, 4, 5.5],
  correlations: [0, 0.1, 0.2, 0.3, 0.4],
  fades: ["groups"],
  persistences: [{ value: 0, share: 1 }],
  spread: "whole",
};
const THIN = { multiples: [0.3, 0.8, 1.3, 1.9, 2.8, 4.5], correlations: [0, 0.15, 0.3, 0.45] } as const;
const PERSISTENT = [
  { value: 0, share: 0.7 },
  { value: 0.8, share: 0.3 },
] as const;

/** The base form, each addition alone, and all of them. */
const FORMS: Readonly<Record<string, NoiseGrid>> = {
  base: BASE,
  thin: { ...BASE, ...THIN },
  days: { ...BASE, ...THIN, fades: ["groups", "days"] },
  persistence: { ...BASE, ...THIN, persistences: PERSISTENT },
  spread: { ...BASE, ...THIN, spread: "local" },
  "days+spread": { ...BASE, ...THIN, fades: ["groups", "days"], spread: "local" },
  all: { ...BASE, ...THIN, fades: ["groups", "days"], persistences: PERSISTENT, spread: "local" },
  now: NOISE_GRID,
};

/** `flat`: one limit for all looks; `policy`: what a look asks beyond it, as in force. */
const { shape } = values;

/** By limit: whether a season is falsely called changed, and whether its change is found. */
interface Crossing {
  readonly falseWord: boolean[];
  readonly found: boolean[];
}

function crossings(scenario: Scenario, noise: NoiseModel, seed: number, number: number): Crossing {
  const simulated = simulateTrack(scenario, seed, number);
  const { series } = judgedSeries(simulated.track, POLICY);
  const at = simulated.changeAt;
  const up = at !== null && (simulated.levels.at(at) as number) + (simulated.levels.at(-1) as number) > 0;
  const looks = series.groups.map((_, last) => evidence(stretchOf(series, 0, last), noise));
  const said = (limit: number): { readonly look: number; readonly up: boolean }[] =>
    looks.flatMap((look, i) =>
      look.kind === "ok" &&
      look.value.logBayesFactor >= limit + (shape === "flat" ? 0 : limitRiseAt(i + 1, POLICY)) &&
      (look.value.directionUp >= POLICY.direction || look.value.directionUp <= 1 - POLICY.direction)
        ? [{ look: i, up: look.value.directionUp > 0.5 }]
        : [],
    );
  const by = LIMITS.map((limit) => {
    const words = said(limit);
    const first = words[0];
    const wrong = first !== undefined && (at === null || first.look < at || first.up !== up);
    return { wrong, found: at !== null && words.some((word) => word.look >= at && word.up === up) };
  });
  return { falseWord: by.map((each) => each.wrong), found: by.map((each) => each.found) };
}

const series = Number(values.series);
const seed = Number(values.seed);
const [part, parts] = (values.part as string).split("/").map(Number) as [number, number];
const pools = [0, 1, 2].map((i) => academyPool(60, seed + 7919 * (i + 1)));
for (const form of (values.forms as string).split(",")) {
  const grid = FORMS[form];
  if (grid === undefined) throw new RangeError(`no such form: ${form}`);
  const models = pools.map((pool) => fitNoiseModel(pool, form, grid));
  [...PROMISED, ...BEYOND, ...CHANGED].forEach((scenario, s) => {
    if (s % parts !== part) return;
    const from = performance.now();
    const found = Array.from({ length: series }, (_, n) =>
      crossings(scenario, models[n % models.length] as NoiseModel, seed + 104_729 * (s + 1), n),
    );
    const share = (of: (each: Crossing) => boolean): number => found.filter(of).length / series;
    const row = {
      form,
      scenario: scenario.name,
      kind: s < PROMISED.length ? "promised" : s < PROMISED.length + BEYOND.length ? "beyond" : "changed",
      falseWord: LIMITS.map((_, i) => share((each) => each.falseWord[i] === true)),
      found: scenario.change === null ? null : LIMITS.map((_, i) => share((each) => each.found[i] === true)),
      ms: Math.round((performance.now() - from) / series),
    };
    console.log(JSON.stringify(row));
  });
}
