import type { BuiltInId } from "./catalogue";

/**
 * Plain trade words for the built-in fundamentals, lower case, blanks for hyphens; the id itself is always a word.
 *
 * Only words that can mean nothing else: `side tilt` alone may be that of setup, top or impact and stands nowhere.
 */
export const FUNDAMENTAL_WORDS: Readonly<Record<BuiltInId, readonly string[]>> = {
  "trail-v": ["trail hand v", "trail hand v aim", "trail v aim", "trail grip", "trail hand grip"],
  "lead-v": ["lead hand v", "lead hand v aim", "lead v aim", "lead grip", "lead hand grip"],
  "foot-line": ["feet", "feet line", "foot aim", "toe line", "stance line"],
  "setup-tilt": [
    "side tilt at setup",
    "tilt at setup",
    "set up tilt",
    "side tilt setup",
    "address tilt",
    "tilt at address",
  ],
  "posture-bend": ["posture", "forward bend", "bend", "spine bend", "posture at setup"],
  "ball-position": ["ball", "ball place", "ball pos"],
  "shoulder-line": ["shoulders", "shoulder aim", "shoulder line at setup"],
  hinge: ["wrist hinge", "hinge angle", "wrist set"],
  "shaft-line": ["shaft line at club parallel", "shaft at parallel", "club line", "shaft aim"],
  "hip-sway": ["sway", "hip sway at top", "hip sway top", "sway at top"],
  "tilt-kept": ["kept tilt", "tilt held"],
  "top-tilt": ["side tilt at top", "tilt at top", "side tilt top"],
  "head-drift": ["head drift at top", "head move", "head movement", "head sway"],
  "impact-tilt": ["side tilt at impact", "tilt at impact", "side tilt impact"],
  "hip-shift": ["hip shift at impact", "hip shift impact", "hips at impact"],
  "shaft-lean": ["shaft lean at impact", "forward shaft lean"],
};
