import type { Direction } from "@/lib/domain/track-verdict";
import type { ShareEvidence } from "@/lib/stats/beta-binomial-looks";
import type { Outcome } from "@/lib/stats/outcome";
import { limitAt } from "./limit-at";
import type { Policy } from "./policy";
import { type HeldEvidence, provedDirection, stillHolds } from "./proved-direction";

/** A change of the share that stands proved. */
export interface ContactClaim {
  readonly direction: Direction;
  /** Look at which it was first proved, from 0. */
  readonly provedAt: number;
}

/**
 * What stands proved after each look, by the discipline of fundamentals: two looks in a row that reach their limits in one
 * direction, or one that goes well beyond its own; a proof stands while the evidence keeps the hold limit in its
 * direction.
 *
 * @param looks evidence after each counted session, in order
 * @param policy its limits
 * @returns one entry a look; null: nothing is proved there
 */
export function contactClaims(
  looks: readonly Outcome<ShareEvidence>[],
  policy: Policy,
): readonly (ContactClaim | null)[] {
  const held = looks.map((look, at): HeldEvidence => {
    const evidence =
      look.kind === "ok" && at + 1 >= policy.firstLook
        ? { logBayesFactor: look.value.logBayesFactor, directionUp: look.value.upChance }
        : null;
    return { evidence, limit: limitAt(at + 1, policy) };
  });
  let claim: ContactClaim | null = null;
  return held.map((now, at) => {
    if (claim !== null && !stillHolds(claim.direction, now.evidence, policy)) claim = null;
    if (claim === null) {
      const direction = provedDirection(now, () => held[at - 1] ?? null, policy);
      claim = direction === null ? null : { direction, provedAt: at };
    }
    return claim;
  });
}
