import { type BuiltInId, isBuiltInId } from "./catalogue";
import type { Fundamental } from "./fundamental";

/** What a tiny drawing shows so that nobody has to remember which way plus goes. */
export type SignPicture =
  /** A line that leans from the plumb line, in its own view; plus leans this way. */
  | { readonly kind: "lean"; readonly of: "spine" | "shaft"; readonly plus: "away" | "target" | "ball" }
  /** A line seen from above; plus is the lead end, or the clubhead, farther out. */
  | { readonly kind: "turn"; readonly of: "feet" | "shoulders" | "shaft" }
  /** A way along the target line since setup; plus is away from the target. */
  | { readonly kind: "move"; readonly of: "hips" | "head" }
  /** Where the V of a hand points; plus goes from the chin to the trail shoulder. */
  | { readonly kind: "aim" }
  /** The ball between the heels; plus goes from the trail heel to the lead heel. */
  | { readonly kind: "heels" }
  /** The angle between a level arm and the club; plus is more of it. */
  | { readonly kind: "hinge" }
  /** Nobody has said what it looks like: an axis alone. */
  | { readonly kind: "axis" };

const TILT: SignPicture = { kind: "lean", of: "spine", plus: "away" };
const AIM: SignPicture = { kind: "aim" };
const HIPS: SignPicture = { kind: "move", of: "hips" };

/** The axes of the catalogue (A away from the target, O toward the ball, closed), as pictures. */
const PICTURES: Readonly<Record<BuiltInId, SignPicture>> = {
  "trail-v": AIM,
  "lead-v": AIM,
  "foot-line": { kind: "turn", of: "feet" },
  "setup-tilt": TILT,
  "posture-bend": { kind: "lean", of: "spine", plus: "ball" },
  "ball-position": { kind: "heels" },
  "shoulder-line": { kind: "turn", of: "shoulders" },
  hinge: { kind: "hinge" },
  "shaft-line": { kind: "turn", of: "shaft" },
  "hip-sway": HIPS,
  "tilt-kept": TILT,
  "top-tilt": TILT,
  "head-drift": { kind: "move", of: "head" },
  "impact-tilt": TILT,
  "hip-shift": HIPS,
  "shaft-lean": { kind: "lean", of: "shaft", plus: "target" },
};

/**
 * What plus of a fundamental looks like.
 *
 * @returns the plain axis for an academy's own fundamental: it says in words which way its plus goes
 */
export function signPicture(fundamental: Fundamental): SignPicture {
  return isBuiltInId(fundamental.id) ? PICTURES[fundamental.id] : { kind: "axis" };
}
