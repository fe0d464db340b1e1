import type { Followed, StoppedTrack, Truth } from "./settle-score";

/** A truth, and its share of what the engine believes before it has seen anything; 0: a truth of a fixed size. */
export interface WeighedTruth extends Truth {
  readonly share: number;
}

/** The engine's own belief, drawn from; then changes of fixed sizes. */
export const TRUTHS: readonly WeighedTruth[] = [
  { name: "unchanged", shape: "flat", size: "prior", share: 0.35 },
  { name: "unchanged, one odd session", shape: "odd", size: "prior", share: 0.15 },
  { name: "step, size as believed", shape: "step", size: "prior", share: 0.25 },
  { name: "ramp, size as believed", shape: "ramp", size: "prior", share: 0.25 },
  { name: "step 1.5 U", shape: "step", size: 1.5, share: 0 },
  { name: "step 2 U", shape: "step", size: 2, share: 0 },
  { name: "step 3 U", shape: "step", size: 3, share: 0 },
  { name: "ramp 2 U", shape: "ramp", size: 2, share: 0 },
];

/** What plans promised on average and how many kept it, weighed by the truths' shares. */
export interface Reliability {
  readonly plans: number;
  readonly promised: number;
  readonly kept: number;
  /** One standard error of `kept`. */
  readonly error: number;
}

type Choice = (row: StoppedTrack) => Followed | null;

/** The plan that settles whatever is true. */
export const settled: Choice = (row) => row.settle;

/** The plan for a change as big as it looks, where that is so. */
export const ifReal: Choice = (row) => (row.ifReal?.condition === "met" ? row.ifReal : null);

/** Promise against outcome over stopped tracks; null: no plan among them. */
export function reliability(rows: readonly StoppedTrack[], choose: Choice, weigh: (row: StoppedTrack) => number) {
  let [plans, total, squares, promised, kept] = [0, 0, 0, 0, 0];
  for (const row of rows) {
    const plan = choose(row);
    const weight = weigh(row);
    if (plan === null || weight === 0) continue;
    plans++;
    total += weight;
    squares += weight * weight;
    promised += weight * plan.chance;
    kept += plan.kept ? weight : 0;
  }
  if (plans === 0) return null;
  const share = kept / total;
  const error = Math.sqrt((share * (1 - share) * squares) / (total * total));
  return { plans, promised: promised / total, kept: share, error } satisfies Reliability;
}

/** Weight of a track among those of the engine's own belief. */
export function asBelieved(row: StoppedTrack): number {
  return TRUTHS.find((truth) => truth.name === row.truth)?.share ?? 0;
}

const evenly = (): number => 1;

function said(found: Reliability | null): string {
  if (found === null) return "0 | - | -";
  return `${found.plans} | ${found.promised.toFixed(3)} | ${found.kept.toFixed(3)} ± ${found.error.toFixed(3)}`;
}

function pooled(rows: readonly StoppedTrack[]): string {
  const lines: [string, (row: StoppedTrack, plan: Followed) => boolean][] = [
    ["all", () => true],
    ["1 or 2 films", (_, plan) => plan.sessions <= 2],
    ["3 or 4 films", (_, plan) => plan.sessions === 3 || plan.sessions === 4],
    ["5 or 6 films", (_, plan) => plan.sessions === 5 || plan.sessions === 6],
    ["7 or 8 films", (_, plan) => plan.sessions >= 7],
    ["stopped at look 5 to 8", (row) => row.look <= 8],
    ["stopped at look 9 to 12", (row) => row.look >= 9 && row.look <= 12],
    ["stopped at look 13 to 16", (row) => row.look >= 13],
  ];
  return lines
    .map(([name, holds]) => {
      const among =
        (choose: Choice): Choice =>
        (row) => {
          const plan = choose(row);
          return plan !== null && holds(row, plan) ? plan : null;
        };
      return `| ${name} | ${said(reliability(rows, among(settled), asBelieved))} | ${said(reliability(rows, among(ifReal), asBelieved))} |`;
    })
    .join("\n");
}

function byTruth(rows: readonly StoppedTrack[]): string {
  return TRUTHS.map(({ name }) => {
    const own = rows.filter((row) => row.truth === name);
    const when =
      (condition: "met" | "smaller" | "not"): Choice =>
      (row) =>
        row.ifReal?.condition === condition ? row.ifReal : null;
    const cells = (["met", "smaller", "not"] as const).map((condition) => {
      const found = reliability(own, when(condition), evenly);
      return found === null ? "-" : `${found.kept.toFixed(2)} of ${found.plans}`;
    });
    const open = own.filter((row) => row.open).length;
    return `| ${name} | ${own.length} | ${open} | ${said(reliability(own, settled, evenly))} | ${cells.join(" | ")} |`;
  }).join("\n");
}

/** Of unchanged tracks, how many showed any change to be as small as was said. */
export function excludedShare(rows: readonly StoppedTrack[]): { readonly asked: number; readonly kept: number } {
  const asked = rows.filter((row) => row.excluded !== null);
  return { asked: asked.length, kept: asked.filter((row) => row.excluded).length / asked.length };
}

/** A run as a page to read. */
export function settleTable(
  run: { readonly date: string; readonly command: string; readonly policyVersion: string },
  rows: readonly StoppedTrack[],
): string {
  const { asked, kept } = excludedShare(rows);
  const ratios = rows.flatMap((row) => row.excludedRatio ?? []).sort((a, b) => a - b);
  return `# Plans, and whether they held: ${run.date}

\`${run.command}\`

Policy ${run.policyVersion}. Simulated tracks are stopped at one look, the 5th to the 16th; what is offered there is followed with the whole engine, a look after every session, the level staying where it is.
± is one standard error of the simulation. Simulator and engine share one family of models, which favours the engine.

## Truths drawn as the engine believes before any film

Settles: the plan without an if. If real: the plan for a change at least as big as it looks, among the tracks in which it is.

| | settles: plans | promised | kept | if real: plans | promised | kept |
|---|---|---|---|---|---|---|
${pooled(rows)}

## By what is true

Of the plans for a change at least as big as it looks: how often they proved it where it is that big, where it is smaller, and how often they proved one that isn't there.

| truth | tracks | open | settles: plans | promised | kept | if real, that big | smaller | not there |
|---|---|---|---|---|---|---|---|---|
${byTruth(rows)}

## If nothing has changed

Of ${asked} unchanged open tracks, the largest plan showed any change to be as small as was said in ${kept.toFixed(3)} ± ${Math.sqrt((kept * (1 - kept)) / asked).toFixed(3)}, promised .8. The limit promised is ${(ratios[ratios.length >> 1] ?? 0).toFixed(2)} times the one known before (median of all open tracks).
`;
}
