import type { Policy } from "@/lib/verdict/policy";
import type { Against } from "./comparison";
import type { Episode, Outcomes } from "./episode";
import { type FitRow, type FittedEffect, fitEffects } from "./fit-effects";
import type { Gathered } from "./gathering";

/** The students of the comparison, and what drills are measured against. */
export interface Compared {
  readonly against: Against;
  /** Without a drill; empty against other drills. */
  readonly reference: readonly Episode[];
  readonly onDrills: readonly Episode[];
  /** The thresholds in force. */
  readonly policy: Policy;
}

/** Those who waited on purpose where they are enough, else all without a recorded drill, else none. */
export function chooseReference({ onDrills, without }: Gathered, policy: Policy): Compared {
  const marked = without.filter((episode) => episode.marked);
  const need = policy.waiters;
  if (marked.length >= need) return { against: "waiting", reference: marked, onDrills, policy };
  if (without.length >= need) return { against: "no-drill-recorded", reference: without, onDrills, policy };
  return { against: "other-drills", reference: [], onDrills, policy };
}

/** Which figures of an episode go into a fit. */
export interface Measure {
  readonly outcomes: (episode: Episode) => Outcomes | null;
  readonly window: "after" | "retained";
  readonly run: "before" | "shorter";
  readonly extra?: (episode: Episode) => Readonly<Record<string, number>>;
}

/** The effect on the next sessions, in the unit. */
export const SCORE: Measure = { outcomes: (episode) => episode.score, window: "after", run: "before" };

/** The row of an episode in a fit; null: its figures are not on file. */
export function rowOf(episode: Episode, { outcomes, window, run, extra }: Measure): FitRow | null {
  const found = outcomes(episode);
  const outcome = found?.[window] ?? null;
  const days = window === "after" ? episode.toMiddle : episode.toRetained;
  if (found === null || outcome === null || days === null) return null;
  const row = { coach: episode.coach, drill: episode.drill, before: found[run], outcome, days };
  return extra === undefined ? row : { ...row, extra: extra(episode) };
}

/** One drill's effect with the students of its fit, in the order of its influence. */
export interface DrillEffect extends FittedEffect {
  readonly episodes: readonly Episode[];
  readonly residualSd: number;
}

/**
 * The effect of every drill with five students or more: against the reference, all drills in one fit; without one, each
 * against all other drills. Absent: too few, or not to be told from what coaches' own students do.
 */
export function drillEffects(
  { reference, onDrills, policy }: Compared,
  measure: Measure,
): ReadonlyMap<string, DrillEffect> {
  const usable = (of: readonly Episode[]) =>
    of.flatMap((episode) => {
      const row = rowOf(episode, measure);
      return row === null ? [] : [{ episode, row }];
    });
  const on = usable(onDrills);
  const counts = new Map<string, number>();
  for (const { row } of on) counts.set(row.drill ?? "", (counts.get(row.drill ?? "") ?? 0) + 1);
  const drills = [...counts].filter(([, count]) => count >= policy.estimated).map(([drill]) => drill);
  if (reference.length === 0) {
    const fits = drills.toSorted().map((drill) => effectsOf(on, [drill], policy));
    return new Map(fits.flatMap((fit) => [...fit]));
  }
  const still = usable(reference);
  if (still.length < policy.waiters || drills.length === 0) return new Map();
  const judged = on.filter(({ row }) => drills.includes(row.drill ?? ""));
  return effectsOf([...still, ...judged], drills.toSorted(), policy);
}

function effectsOf(
  of: readonly { readonly episode: Episode; readonly row: FitRow }[],
  drills: readonly string[],
  policy: Policy,
): ReadonlyMap<string, DrillEffect> {
  const rows = of.map(({ row }) => row);
  const fitted = fitEffects(rows, drills, policy);
  if (fitted === null) return new Map();
  const episodes = of.map(({ episode }) => episode);
  return new Map(
    [...fitted.drills].map(([drill, effect]) => [drill, { ...effect, episodes, residualSd: fitted.residualSd }]),
  );
}
