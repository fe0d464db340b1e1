import { HIGH_SENSITIVITY } from "@/lib/capture/camera-limits";
import type { Fundamental } from "@/lib/domain/fundamental";
import type { CameraCare } from "@/lib/words/say-settle";

/** Less camera error than usual by this factor is asked for as care. */
const LESS = 0.75;

/** The care for the camera that a plan asks for: only that which the fundamental is moved by. */
export function cameraCare(
  plan: { readonly captureSd: number },
  usualCaptureSd: number | null,
  { sensitivity }: Pick<Fundamental, "sensitivity">,
): CameraCare {
  if (usualCaptureSd === null || plan.captureSd >= usualCaptureSd * LESS) return null;
  const moves = (by: number): boolean => Math.abs(by) >= HIGH_SENSITIVITY;
  const { yaw, roll, offset } = sensitivity;
  if (moves(offset)) return moves(roll) ? "offset-roll" : "offset";
  if (moves(yaw)) return moves(roll) ? "yaw-roll" : "yaw";
  return moves(roll) ? "roll" : "any";
}
