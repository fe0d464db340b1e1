import type { Policy } from "./policy";

/**
 * What a look asks beyond the limit: more before a track knows its own noise, and more again late in a season and
 * beyond it.
 *
 * @param look 1 for the look after the track's first session, one look a session
 * @returns natural log of a Bayes factor, 0 or more
 */
export function limitRiseAt(look: number, policy: Policy): number {
  const early = Math.max(0, policy.limitEarlyLooks - look);
  return policy.limitEarlyRise * early + lateRiseAt(look, policy);
}

/** The part of the rise that comes late in a season and beyond it: from a look on, and slower after the free ones. */
export function lateRiseAt(look: number, policy: Policy): number {
  const late = Math.max(0, Math.min(look, policy.limitFreeLooks) - policy.limitLateLooks);
  const beyond = Math.max(0, Math.ceil((look - policy.limitFreeLooks) / 10));
  return policy.limitLateRise * late + policy.limitRise * beyond;
}

/**
 * The limit that evidence has to reach at a look.
 *
 * @param look 1 for the look after the track's first session, one look a session
 * @returns natural log of a Bayes factor
 */
export function limitAt(look: number, policy: Policy): number {
  return policy.limit + limitRiseAt(look, policy);
}
