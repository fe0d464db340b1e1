import type { WorkStanding } from "./work-standing";

/** What is said of a fundamental in the chain, in the order of a learner's way. */
export const WORK_STATES = ["unmeasured", "open", "working", "keep", "owned", "slipped"] as const;

/** What is said of a fundamental in the chain. */
export type WorkState = (typeof WORK_STATES)[number];

/**
 * What a fundamental's place in the chain is called: `slipped` and `owned` by their own rules; `working` is in hand or has a
 * drill that runs; `keep` lies inside and isn't owned; `open` waits, outside or in doubt or without a goal.
 *
 * @param work `yes`: it is the one in hand, or a drill for it runs
 */
export function workState(standing: WorkStanding, work: "yes" | "no"): WorkState {
  if (standing === "unmeasured" || standing === "slipped" || standing === "owned") return standing;
  if (work === "yes") return "working";
  return standing === "inside" ? "keep" : "open";
}
