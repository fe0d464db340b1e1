import type { Policy } from "./policy";

/**
 * The limit that evidence has to reach at a look.
 *
 * @param look 1 for the look after the track's first session, one look a session
 * @returns natural log of a Bayes factor; constant over the free looks, then higher by one rise for each ten looks begun
 */
export function limitAt(look: number, policy: Policy): number {
  return policy.limit + policy.limitRise * Math.max(0, Math.ceil((look - policy.limitFreeLooks) / 10));
}
