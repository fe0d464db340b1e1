import type { BuiltInId } from "@/lib/domain/catalogue";
import type { FilmedSession } from "@/lib/verdict/fingerprint-residuals";
import { builtIn } from "./filmed-season";

const STEADY: Readonly<Partial<Record<BuiltInId, number>>> = {
  "setup-tilt": 5,
  "top-tilt": 4,
  "impact-tilt": 12,
  hinge: 84,
  "hip-sway": 3,
};

/** A session whose three swings of each fundamental are all alike, so that every variance is known by hand. */
export function plainFilm(
  id: string,
  moved: Partial<Record<BuiltInId, number>> = {},
  change: Partial<FilmedSession> = {},
): FilmedSession {
  return {
    id,
    label: null,
    shiftSd: 1,
    rollSd: 0.5,
    recordedOff: 0,
    fundamentals: Object.entries(STEADY).map(([key, level]) => {
      const value = level + (moved[key as BuiltInId] ?? 0);
      return {
        fundamental: builtIn(key as BuiltInId),
        swings: [value, value, value],
        captureSd: 0.9,
        reader: "Wren",
        era: "now",
      };
    }),
    ...change,
  };
}
