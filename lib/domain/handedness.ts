/** The side a golfer plays from. */
export const HANDS = ["right", "left"] as const;

/** The side a golfer plays from. */
export type Hand = (typeof HANDS)[number];

/**
 * What plus meant to whoever typed a value.
 *
 * `neutral`: by the rule of the catalogue (away from the target, closed, toward the ball), the same for both hands.
 * `picture`: the same side of the picture for both hands, the one that a right-hander's rule names; so a left-hander's values
 * of a mirrored fundamental are turned.
 */
export const SIGN_RULES = ["neutral", "picture"] as const;

/** What plus meant to whoever typed a value. */
export type SignRule = (typeof SIGN_RULES)[number];

/**
 * A typed value in the handedness-neutral sign of the catalogue.
 *
 * @param typed value as typed, in the fundamental's unit
 * @param hand the student's hand
 * @param rule what plus meant to the one who typed
 * @param mirrors `mirrors` where a mirrored picture turns the sign of this fundamental
 * @returns the value to judge, same unit; only a left-hander's picture-signed value of a mirrored fundamental is turned
 */
export function neutralValue(typed: number, hand: Hand, rule: SignRule, mirrors: "mirrors" | "same"): number {
  const turned = hand === "left" && rule === "picture" && mirrors === "mirrors";
  return turned && typed !== 0 ? -typed : typed;
}
