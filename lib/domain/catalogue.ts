import { BEFORE_SWING } from "./catalogue-before-swing";
import { IN_SWING } from "./catalogue-in-swing";
import type { FundamentalShape, OwnId } from "./fundamental-shape";

/**
 * The built-in fundamentals in the order of work: grip before anything, set-up before the swing, the pivot before impact.
 *
 * Bands, plausible ranges and reading errors: common practice, no source. Camera sensitivities: derived by projection
 * geometry at a forward bend of 35 degrees (side tilt 0.7 per degree of yaw, roll one to one; lines seen end-on follow
 * the angle of the sideways offset one to one; a difference of two tilts keeps 0.12 of the yaw and none of the roll).
 */
export const CATALOGUE = [...BEFORE_SWING, ...IN_SWING] as const;

/** Id of a built-in fundamental. */
export type BuiltInId = (typeof CATALOGUE)[number]["id"];

type AnyFundamental = FundamentalShape<BuiltInId | OwnId>;

/** The built-in fundamentals as plain entries, in the order of work. */
export const BUILT_IN: readonly AnyFundamental[] = CATALOGUE;

/**
 * A fundamental by its id, among the built-in and the academy's own ones.
 *
 * @returns undefined when nobody knows the id
 */
export function findFundamental(id: string, own: readonly AnyFundamental[]): AnyFundamental | undefined {
  return BUILT_IN.find((entry) => entry.id === id) ?? own.find((entry) => entry.id === id);
}

/** All fundamentals of an academy in the order of work. */
export function orderedFundamentals(own: readonly AnyFundamental[]): readonly AnyFundamental[] {
  return [...BUILT_IN, ...own].sort((a, b) => a.order - b.order || a.id.localeCompare(b.id));
}

/** Whether a text is the id of a built-in fundamental. */
export function isBuiltInId(id: string): id is BuiltInId {
  return BUILT_IN.some((entry) => entry.id === id);
}
