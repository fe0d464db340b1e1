import { writeFileSync } from "node:fs";
import path from "node:path";
import { parseArgs } from "node:util";
import { isCalendarDay } from "@/lib/domain/calendar-day";
import { evidence } from "@/lib/stats/evidence";
import { fitNoiseModel } from "@/lib/stats/fit-noise-model";
import { NOISE_GRID, type NoiseGrid } from "@/lib/stats/noise-grid";
import type { NoiseModel } from "@/lib/stats/noise-model";
import { judgedSeries, stretchOf } from "@/lib/verdict/judged-series";
import { limitAt } from "@/lib/verdict/limit-at";
import { POLICY } from "@/lib/verdict/policy";
import { type HeldEvidence, provedDirection } from "@/lib/verdict/proved-direction";
import { academyPool, type Scenario, simulateTrack } from "./population";
import { BEYOND, CHANGED, PROMISED } from "./scenarios";

const { values } = parseArgs({
  options: {
    series: { type: "string", default: "150" },
    seed: { type: "string", default: "1" },
    forms: { type: "string", default: "base,thin,days,persistence,spread,all" },
    date: { type: "string" },
  },
});

const LIMITS = [1.5, 1.75, 2, 2.25, 2.5, 2.75, 3, 3.5, 4] as const;

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

/** When a limit counts as reached: at one look under one limit for all, at one under that of its look, or as in force. */
const RULES = ["one look, one limit", "one look, limit by look", "two looks in a row"] as const;
type Rule = (typeof RULES)[number];

interface Look {
  readonly logBayesFactor: number;
  readonly directionUp: number;
}

/** Looks at which a change is proved, and its direction. */
function proofs(looks: readonly (Look | null)[], rule: Rule, limit: number): { look: number; up: boolean }[] {
  const policy = { ...POLICY, limit, ...(rule === "two looks in a row" ? {} : { limitAlone: 0 }) };
  const held = (i: number): HeldEvidence | null => {
    const evidence = looks[i];
    if (!evidence) return null;
    return { evidence, limit: rule === "one look, one limit" ? limit : limitAt(i + 1, policy) };
  };
  return looks.flatMap((_, i) => {
    const now = held(i);
    const direction = now === null ? null : provedDirection(now, () => held(i - 1), policy);
    return direction === null ? [] : [{ look: i, up: direction === "up" }];
  });
}

/** By rule, then limit: whether a season is falsely called changed, and whether its change is found. */
type Crossings = Readonly<Record<Rule, readonly { readonly wrong: boolean; readonly found: boolean }[]>>;

function crossings(scenario: Scenario, noise: NoiseModel, seed: number, number: number): Crossings {
  const simulated = simulateTrack(scenario, seed, number);
  const { series } = judgedSeries(simulated.track, POLICY);
  const at = simulated.changeAt;
  const up = at !== null && (simulated.levels.at(at) as number) + (simulated.levels.at(-1) as number) > 0;
  const looks = series.groups.map((_, last) => {
    const found = evidence(stretchOf(series, 0, last), noise);
    return found.kind === "ok" ? found.value : null;
  });
  const of = (rule: Rule) =>
    LIMITS.map((limit) => {
      const proved = proofs(looks, rule, limit);
      const first = proved[0];
      const wrong = first !== undefined && (at === null || first.look < at || first.up !== up);
      return { wrong, found: at !== null && proved.some((each) => each.look >= at && each.up === up) };
    });
  return {
    "one look, one limit": of(RULES[0]),
    "one look, limit by look": of(RULES[1]),
    "two looks in a row": of(RULES[2]),
  };
}

/** What the table shows of changed seasons. */
const FOUND = ["step 1.5 U", "step 2 U", "step 3 U", "curve to 2 U"];

interface Row {
  readonly scenario: string;
  readonly kind: "promised" | "beyond" | "changed";
  readonly share: Readonly<Record<Rule, readonly number[]>>;
}

function rowOf(scenario: Scenario, kind: Row["kind"], s: number, models: readonly NoiseModel[], seed: number): Row {
  const series = Number(values.series);
  const seen = Array.from({ length: series }, (_, n) =>
    crossings(scenario, models[n % models.length] as NoiseModel, seed + 104_729 * (s + 1), n),
  );
  const share = (rule: Rule): readonly number[] =>
    LIMITS.map(
      (_, i) =>
        seen.filter((each) => (kind === "changed" ? each[rule][i]?.found : each[rule][i]?.wrong)).length / series,
    );
  return {
    scenario: scenario.name,
    kind,
    share: {
      "one look, one limit": share(RULES[0]),
      "one look, limit by look": share(RULES[1]),
      "two looks in a row": share(RULES[2]),
    },
  };
}

function tableOf(form: string, rule: Rule, rows: readonly Row[]): string {
  const lines = LIMITS.map((limit, i) => {
    const at = (row: Row): number => row.share[rule][i] as number;
    const promised = rows.filter((row) => row.kind === "promised").map(at);
    const beyond = rows.filter((row) => row.kind === "beyond").map(at);
    const cells = [
      promised.reduce((sum, value) => sum + value, 0) / promised.length,
      Math.max(...promised),
      ...beyond,
      ...FOUND.map((name) => at(rows.find((row) => row.scenario === name) as Row)),
    ];
    return `| ${[limit.toFixed(2), ...cells.map((cell) => cell.toFixed(3))].join(" | ")} |`;
  });
  const names = [
    "limit",
    "promised, mean",
    "promised, largest",
    ...rows.filter((row) => row.kind === "beyond").map((row) => row.scenario),
    ...FOUND.map((name) => `found: ${name}`),
  ];
  const head = `| ${names.join(" | ")} |\n|${"---|".repeat(names.length)}`;
  return `### ${form}, ${rule}\n\n${[head, ...lines].join("\n")}\n`;
}

function main(): void {
  const { date } = values;
  if (date === undefined || !isCalendarDay(date)) throw new RangeError("say the day of the run: --date YYYY-MM-DD");
  const seed = Number(values.seed);
  const pools = [0, 1, 2].map((i) => academyPool(60, seed + 7919 * (i + 1)));
  const scenarios = [
    ...PROMISED.map((scenario) => ({ scenario, kind: "promised" as const })),
    ...BEYOND.map((scenario) => ({ scenario, kind: "beyond" as const })),
    ...CHANGED.map((scenario) => ({ scenario, kind: "changed" as const })),
  ];
  const tables = values.forms.split(",").flatMap((form) => {
    const grid = FORMS[form];
    if (grid === undefined) throw new RangeError(`no such form: ${form}`);
    const models = pools.map((pool) => fitNoiseModel(pool, form, grid));
    const rows = scenarios.flatMap(({ scenario, kind }, s) => {
      if (kind === "changed" && !FOUND.includes(scenario.name)) return [];
      console.error(`${form}: ${scenario.name}`);
      return [rowOf(scenario, kind, s, models, seed)];
    });
    return RULES.map((rule) => tableOf(form, rule, rows));
  });
  const text = `# False words against changes found, ${date}

\`npm run frontier -- --date ${date} --series ${values.series} --seed ${seed} --forms ${values.forms}\`

By limit, for the base form of the noise model (one spread, correlation by sessions, camera errors drawn anew), each addition alone on the thin grid, and all of
them. ${values.series} seasons a cell: one standard error is ${Math.sqrt((0.05 * 0.95) / Number(values.series)).toFixed(3)} at .05 and ${Math.sqrt(0.25 / Number(values.series)).toFixed(3)} at .5; every form and rule sees the same seasons. False: a change ever claimed in 40 unchanged
sessions. Found: claimed the right way by session 20. Limit by look: ${POLICY.limitEarlyRise} more for each look before the ${POLICY.limitEarlyLooks}th, ${POLICY.limitLateRise} for each after the ${POLICY.limitLateLooks}th. Two looks in a row: both at the limit, or
one ${POLICY.limitAlone} beyond it.

${tables.join("\n")}`;
  writeFileSync(path.join(import.meta.dirname, "frontier.md"), text);
  console.log(text);
}

main();
