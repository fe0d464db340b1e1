import type { FundamentalId } from "@/lib/domain/fundamental";

/** How an adult of usual steadiness wavers, in the fundamental's unit; reading error apart. Own choice, no source. */
export interface UsualNoise {
  readonly daySd: number;
  readonly swingSd: number;
  /** Values are read in multiples of it. */
  readonly rounding: number;
}

const USUAL: Readonly<Partial<Record<FundamentalId, UsualNoise>>> = {
  "trail-v": { daySd: 3.5, swingSd: 4, rounding: 5 },
  "lead-v": { daySd: 3.5, swingSd: 4, rounding: 5 },
  "foot-line": { daySd: 0.8, swingSd: 1.2, rounding: 1 },
  "setup-tilt": { daySd: 0.8, swingSd: 1.2, rounding: 1 },
  "posture-bend": { daySd: 0.9, swingSd: 1.2, rounding: 1 },
  "ball-position": { daySd: 1.2, swingSd: 1.8, rounding: 1 },
  hinge: { daySd: 1.7, swingSd: 3.3, rounding: 1 },
  "shaft-line": { daySd: 1.5, swingSd: 3, rounding: 1 },
  "hip-sway": { daySd: 1.2, swingSd: 2.4, rounding: 1 },
  "tilt-kept": { daySd: 0.9, swingSd: 1.8, rounding: 1 },
  "head-drift": { daySd: 1.2, swingSd: 2.4, rounding: 1 },
  "impact-tilt": { daySd: 1.2, swingSd: 2.4, rounding: 1 },
  "hip-shift": { daySd: 1.6, swingSd: 3.4, rounding: 1 },
};

const OWN: UsualNoise = { daySd: 1.2, swingSd: 2, rounding: 1 };

/** The usual noise of a fundamental; the academy's own ones have one of their own. */
export function usualNoise(fundamentalId: FundamentalId): UsualNoise {
  return USUAL[fundamentalId] ?? OWN;
}
