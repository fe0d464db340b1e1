import type { ReachTruth } from "./reach-population";
import type { ReachScore } from "./reach-score";

const GAINS = [4, 6, 8] as const;
const SCALES = [3, 6, 10] as const;

/** Curves that will reach the band and have not yet. */
export const NEARING: readonly ReachTruth[] = GAINS.flatMap((gain) =>
  SCALES.map((scale): ReachTruth => ({ name: `gain ${gain} U, scale ${scale}`, gain, scale, edge: "within" })),
);

/** Tracks that never reach it. */
export const NEVER: readonly ReachTruth[] = [
  { name: "curve to 6 U, scale 6, ends short", gain: 6, scale: 6, edge: "beyond" },
  { name: "curve to 8 U, scale 3, ends short", gain: 8, scale: 3, edge: "beyond" },
  { name: "curve to 8 U, scale 10, ends short", gain: 8, scale: 10, edge: "beyond" },
  { name: "curve to 6 U, scale 3, ends just short", gain: 6, scale: 3, edge: "just-beyond" },
  { name: "step of 4 U, short of the band", gain: 4, scale: 0, edge: "beyond" },
  { name: "step of 8 U, short of the band", gain: 8, scale: 0, edge: "beyond" },
  { name: "step of 6 U, just short", gain: 6, scale: 0, edge: "just-beyond" },
  { name: "unchanged, band 2 to 6 U away", gain: 0, scale: 0, edge: "beyond" },
];

/** How often dates were said, and how often they held. */
export interface Coverage {
  readonly said: number;
  readonly held: number;
  /** One standard error of `held`. */
  readonly error: number;
  readonly later: number;
  readonly medianWeeks: number;
}

/** Coverage of the dates among scores; null: none were said. */
export function coverage(scores: readonly ReachScore[]): Coverage | null {
  const ranges = scores.flatMap((score) => score.range ?? []);
  if (ranges.length === 0) return null;
  const share = (side: "within" | "later"): number =>
    ranges.filter((range) => range.truth === side).length / ranges.length;
  const held = share("within");
  const weeks = ranges.map((range) => range.weeks).sort((a, b) => a - b);
  return {
    said: ranges.length,
    held,
    error: Math.sqrt((held * (1 - held)) / ranges.length),
    later: share("later"),
    medianWeeks: weeks[weeks.length >> 1] as number,
  };
}

function line(name: string, scores: readonly ReachScore[]): string {
  const asked = scores.filter((score) => score.asked);
  const found = coverage(scores);
  const dates =
    found === null
      ? "0 | - | - | -"
      : `${found.said} | ${found.held.toFixed(3)} ± ${found.error.toFixed(3)} | ${found.later.toFixed(3)} | ${found.medianWeeks.toFixed(0)}`;
  const count = (said: ReachScore["said"]): number => asked.filter((score) => score.said === said).length;
  const others = (["stopped-short", "close", "too-few", "too-wide"] as const).map(count).join(" | ");
  return `| ${name} | ${scores.length} | ${asked.length} | ${dates} | ${others} |`;
}

const HEAD = `| truth | tracks | looked for | dates | held | truth later | weeks, median | stopped short | close | too few | too wide |
|---|---|---|---|---|---|---|---|---|---|---|`;

/** A run as a page to read. */
export function reachTable(
  run: { readonly date: string; readonly command: string; readonly seed: number; readonly policyVersion: string },
  scores: readonly ReachScore[],
): string {
  const nearing = scores.filter(({ truth }) => NEARING.includes(truth));
  const those = (name: string, holds: (score: ReachScore) => boolean): string => line(name, nearing.filter(holds));
  return `# Dates of reaching the band, and whether they held: ${run.date}

\`${run.command}\`

Seed ${run.seed}, policy ${run.policyVersion}. Simulated tracks of 8 to 20 sessions are judged as of the last one; noise is learned from three academies of 60.
Films come every 4 to 13 days, in a fifth of the tracks every 3 to 50; half of the levels go by sessions, half by days. *Looked for*: a gain toward the band stands proved and the level lies outside with its whole interval; the columns after it count these alone.
± is one standard error of the simulation. Simulator and engine share one family of models, which favours the engine.

## Curves that will reach the band and have not yet

The near edge lies at .4 to .95 of the gain, and the true level outside at the last session. Dates should hold in .75 to .95.

${HEAD}
${NEARING.map((truth) => those(truth.name, (score) => score.truth === truth)).join("\n")}
${GAINS.map((gain) => those(`all of gain ${gain}`, (score) => score.truth.gain === gain)).join("\n")}
${SCALES.map((scale) => those(`all of scale ${scale}`, (score) => score.truth.scale === scale)).join("\n")}
${(["sessions", "days"] as const).map((clock) => those(`level goes by ${clock}`, (score) => score.clock === clock)).join("\n")}
${(["weekly", "usual"] as const).map((rhythm) => those(rhythm === "weekly" ? "films every 4 to 13 days" : "films every 3 to 50 days", (score) => score.rhythm === rhythm)).join("\n")}
${those("all", () => true)}

## Tracks that never reach it

Any date is wrong. Short of the band: it begins at 1.05 to 1.5 of the gain; just short: .1 to .9 U beyond its end.

${HEAD}
${NEVER.map((truth) =>
  line(
    truth.name,
    scores.filter((score) => score.truth === truth),
  ),
).join("\n")}
`;
}
