import type { CorrelationBelief, GroupCounts } from "@/lib/stats/group-counts";

/** Counts of a group as an urn gives them: each success makes the next likelier, so that any two trials are correlated. */
export function drawnGroup(trials: number, share: number, correlation: number, chance: () => number): GroupCounts {
  const pull = correlation / (1 - correlation);
  let successes = 0;
  for (let i = 0; i < trials; i++) if (chance() < (share + successes * pull) / (1 + i * pull)) successes++;
  return { successes, trials };
}

/** Groups of a reference case, and the belief that it names. */
export function groupsOf(input: { groups: [number, number][]; rho: number[]; weight: number[] }): {
  groups: GroupCounts[];
  belief: CorrelationBelief;
} {
  return {
    groups: input.groups.map(([successes, trials]) => ({ successes, trials })),
    belief: { correlations: input.rho, weights: input.weight },
  };
}

/** A summary as the reference file names it. */
export interface ReferenceSummary {
  readonly mean: number;
  readonly "equal_tail_0.8": [number, number];
  readonly "equal_tail_0.95": [number, number];
  readonly "shortest_0.8": [number, number];
  readonly "shortest_0.95": [number, number];
}
