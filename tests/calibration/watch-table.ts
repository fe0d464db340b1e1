import { flat } from "@/seed/level-path";
import type { OwnedSeason, WatchedSeason } from "./watch-score";

/** Owned fundamentals of one student, watched together. */
export const ITEMS = 8;

/** Seasons without a loss: within the promise, and what it costs when an assumption fails. */
export const UNCHANGED: readonly OwnedSeason[] = [
  { name: "nothing lost, one edge", loss: 0, edges: "one" },
  { name: "nothing lost, two edges", loss: 0, edges: "two" },
];

/** Unchanged seasons unlike the usual ones. */
export const UNLIKE: readonly OwnedSeason[] = [
  {
    name: "heavy tails (t4)",
    loss: 0,
    edges: "either",
    unlike: (plan) => ({ ...plan, path: flat(0), noise: { ...plan.noise, tails: "t4" } }),
  },
  {
    name: "spread x 1.8 from session 20",
    loss: 0,
    edges: "either",
    unlike: (plan) => ({ ...plan, noise: { ...plan.noise, spreadChange: { from: 20, factor: 1.8 } } }),
  },
];

/** Losses. */
export const LOSSES: readonly OwnedSeason[] = [
  { name: "3 U, one edge", loss: 3, edges: "one" },
  { name: "3 U, two edges", loss: 3, edges: "two" },
  { name: "2 U, one edge", loss: 2, edges: "one" },
];

/** A share with one standard error of the simulation. */
export interface Share {
  readonly of: number;
  readonly share: number;
  readonly error: number;
}

function shareOf(count: number, of: number): Share {
  const share = of === 0 ? 0 : count / of;
  return { of, share, error: of === 0 ? 0 : Math.sqrt((share * (1 - share)) / of) };
}

/** Of owned seasons, how many ever met an alarm. */
export function alarmed(seasons: readonly WatchedSeason[]): Share {
  const owned = seasons.filter((season) => season.ownedFrom !== null);
  return shareOf(owned.filter((season) => season.alarmAt !== null).length, owned.length);
}

/** Of students who own so many such fundamentals, independent of one another, how many meet an alarm in any. */
export function studentsAlarmed({ of, share, error }: Share): Share {
  const none = (1 - share) ** ITEMS;
  return { of, share: 1 - none, error: ITEMS * (1 - share) ** (ITEMS - 1) * error };
}

/** Of losses of a track that was owned and at rest, how many were alarmed within so many sessions. */
export function alarmedWithin(seasons: readonly WatchedSeason[], sessions: number): Share {
  const lost = seasons.filter((season) => season.lossAt !== null);
  return shareOf(
    lost.filter((season) => season.alarmAfter !== null && season.alarmAfter <= sessions).length,
    lost.length,
  );
}

/** The same, of the proof of a change alone. */
export function provedWithin(seasons: readonly WatchedSeason[], sessions: number): Share {
  const lost = seasons.filter((season) => season.lossAt !== null);
  return shareOf(
    lost.filter((season) => season.provedAfter !== null && season.provedAfter <= sessions).length,
    lost.length,
  );
}

const said = ({ share, error }: Share, digits: number): string => `${share.toFixed(digits)} ± ${error.toFixed(digits)}`;

/** One kind of season with all that was watched. */
export interface WatchedRow {
  readonly season: OwnedSeason;
  readonly seasons: readonly WatchedSeason[];
}

function lossLines({ season, seasons }: WatchedRow): string {
  const early = seasons.filter((each) => each.lossAt !== null && each.lossAt < 16);
  const late = seasons.filter((each) => each.lossAt !== null && each.lossAt >= 16);
  return [
    [season.name, seasons],
    [`${season.name}, before session 17`, early],
    [`${season.name}, later`, late],
  ]
    .map(([name, part]) => {
      const among = part as readonly WatchedSeason[];
      const cells = [1, 2, 3, 4].map((sessions) => said(alarmedWithin(among, sessions), 3));
      const proof = [2, 4].map((sessions) => provedWithin(among, sessions).share.toFixed(3));
      return `| ${name} | ${alarmedWithin(among, 1).of} | ${cells.join(" | ")} | ${proof.join(" | ")} |`;
    })
    .join("\n");
}

/** A run as a page to read. */
export function watchTable(
  run: { readonly date: string; readonly command: string; readonly policyVersion: string; readonly seed: number },
  rows: readonly WatchedRow[],
): string {
  const unchanged = rows.filter((row) => row.season.loss === 0);
  const promised = unchanged.filter((row) => UNCHANGED.includes(row.season)).flatMap((row) => row.seasons);
  const line = (name: string, seasons: readonly WatchedSeason[]): string =>
    `| ${name} | ${alarmed(seasons).of} | ${said(alarmed(seasons), 4)} | ${said(studentsAlarmed(alarmed(seasons)), 3)} |`;
  return `# The watch over what is owned: ${run.date}

\`${run.command}\`

Policy ${run.policyVersion}, seed ${run.seed}; noise learned from five academies of 60. Seasons of 40 sessions of one fundamental, owned by the owning rule, a look after every session.
± is one standard error of the simulation. Simulator and engine share one family of models, which favours the engine.

## Nothing is lost

How many owned seasons ever meet an alarm, and of students with ${ITEMS} such fundamentals, independent of one another, how many.

| | seasons | alarmed | of students |
|---|---|---|---|
${line("both together", promised)}
${unchanged.map((row) => line(row.season.name, row.seasons)).join("\n")}

## A loss

Its first session is the 9th to the 36th, toward the nearer edge; how many are alarmed within so many sessions, the first one counted, and how many the proof of a change alone has found by then.

| | losses | 1 | 2 | 3 | 4 | proved within 2 | 4 |
|---|---|---|---|---|---|---|---|
${rows
  .filter((row) => row.season.loss > 0)
  .map(lossLines)
  .join("\n")}
`;
}
