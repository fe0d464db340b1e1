import type { Approach, ApproachNode } from "./exponential-approach";
import { requireFinite } from "./require-finite";
import { tabulatedNormalCdf } from "./tabulated-normal";

/** How fast the next groups may come, against the usual gap: groups in a usual gap's days, and its share of belief. */
export interface Pace {
  readonly factor: number;
  readonly share: number;
}

/** When a level first reaches an edge. */
export interface FirstPassage {
  /** Probability that it has so many days (0 or more) after the last group, 0 to 1; to 1e-9. */
  reachedBy(days: number): number;
  /** Probability that it never does: the whole gain falls short of the edge. */
  readonly never: number;
}

/**
 * When a level that approaches another one first reaches an edge.
 *
 * `approach`: conceivable approaches, in the unit; `edge`: in the unit; `direction`: whether the edge is reached from below
 * (`up`) or from above; `paces`: shares that sum to 1, for approaches that go by groups: those that go by days need none.
 * An approach never turns back, so its level has reached the edge by a day if it lies beyond it then: one normal
 * probability a node, exact but for the table of the distribution. An edge or a pace that isn't finite throws a RangeError.
 * Assumes what `exponentialApproach` assumes; a level beyond the edge from the start counts as reached.
 */
export function firstPassage(
  approach: Approach,
  edge: number,
  direction: "up" | "down",
  paces: readonly Pace[],
): FirstPassage {
  requireFinite([edge], "edge");
  requireFinite(
    paces.flatMap(({ factor, share }) => [factor, share]),
    "paces",
  );
  const way = direction === "up" ? 1 : -1;
  const beyond = (node: ApproachNode, share: number): number => {
    const off = share - node.centre;
    const mean = node.centreLevel + off * node.gain;
    return tabulatedNormalCdf((way * (mean - edge)) / Math.sqrt(node.centreVariance + off * off * node.gainVariance));
  };
  const after = (node: ApproachNode, gaps: number): number =>
    beyond(node, node.scale === 0 ? 1 : -Math.expm1(-(node.since + gaps) / node.scale));
  const believed = (of: (node: ApproachNode) => number): number =>
    approach.nodes.reduce((sum, node) => sum + node.weight * of(node), 0);
  return {
    reachedBy: (days) => {
      const gaps = days / approach.gapDays;
      return believed((node) =>
        node.clock === "days" || node.scale === 0
          ? after(node, gaps)
          : paces.reduce((sum, { factor, share }) => sum + share * after(node, gaps * factor), 0),
      );
    },
    never: 1 - believed((node) => beyond(node, 1)),
  };
}
