import type { ReadBackCandidate } from "@/lib/domain/read-back";
import { randomOrder } from "./random-order";

/** What is to be read back. */
export interface ReadBackWish {
  readonly sessionIds: readonly string[];
  /** Swings of each film; null: all. */
  readonly each: number | null;
}

/** A swing that can be read back. */
export type ReadableSwing = ReadBackCandidate & { readonly filmReference: string };

/** Whether a swing's film can be opened and isn't waiting already. */
export function isReadable(candidate: ReadBackCandidate): candidate is ReadableSwing {
  return candidate.filmed === "yes" && candidate.waits === "no" && (candidate.filmReference ?? "").trim() !== "";
}

/**
 * Swings of chosen earlier films in random order, so that neither a film's place in time nor the swing before it can be
 * guessed from where it stands. Of each film as many as are wished are taken by chance.
 *
 * @param candidates any order; those that can't be opened, or wait already, are passed over
 * @param chance numbers from 0 to below 1
 */
export function drawReadBack(
  candidates: readonly ReadBackCandidate[],
  wish: ReadBackWish,
  chance: () => number,
): readonly ReadableSwing[] {
  const taken = wish.sessionIds.flatMap((sessionId) => {
    const own = candidates.filter((candidate) => candidate.sessionId === sessionId).filter(isReadable);
    return randomOrder(own, chance).slice(0, wish.each ?? own.length);
  });
  return randomOrder(taken, chance);
}
