import type { BuiltInId } from "./catalogue";

/**
 * The fundamentals that the trade's order of work names, first to last: before the swing the trail hand’s grip, the lead
 * hand’s, the foot line (every down-the-line reading depends on it), side tilt, posture and ball position; then hinge,
 * club-parallel, sway and the tilt that is kept. What isn’t among them is worked on once it is measured, but nobody is asked to
 * measure it. Common practice, no source.
 */
export const NAMED_IN_ORDER = [
  "trail-v",
  "lead-v",
  "foot-line",
  "setup-tilt",
  "posture-bend",
  "ball-position",
  "hinge",
  "shaft-line",
  "hip-sway",
  "tilt-kept",
] as const satisfies readonly BuiltInId[];

/** Whether the order of work names a fundamental, so that it is missed where it isn’t measured. */
export function isNamedInOrder(fundamental: { readonly id: string }): fundamental is { readonly id: BuiltInId } {
  return NAMED_IN_ORDER.some((id) => id === fundamental.id);
}

/**
 * The two fundamentals of the pattern that the trade calls a reverse pivot: the hips slide away from the target while the spine
 * tilts toward it. Common practice, no source.
 */
export const REVERSE_PIVOT_PARTS = { sway: "hip-sway", tilt: "tilt-kept" } as const satisfies Record<string, BuiltInId>;
