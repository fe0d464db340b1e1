import type { FingerprintThreshold } from "./fingerprint-thresholds";

/** Every threshold by which a jump common to a group is named as the camera; those within one student stand in `FINGERPRINT`. */
export const GROUP_JUMP_THRESHOLDS = {
  fewestStudents: {
    value: 3,
    unit: "students whose usual levels are known",
    reason: "two that move together may as well be two changes",
    source: "common practice, no source",
  },
  together: {
    value: 2.6,
    unit: "standard errors of the common shift",
    reason: "that far off by chance is one group session in a hundred",
    source: "normal distribution, two-sided 0.009",
  },
  beyond: {
    value: 1.28,
    unit: "standard errors beyond what a square phone may be off",
    reason:
      "90 of 100 that the phone stood off by more than that; without it a checked phone's own small error would be named in large groups",
    source: "normal distribution, one-sided 0.10",
  },
  sameSide: {
    value: 0.75,
    unit: "share of the students who moved to the side of the shift",
    reason: "a shift that rests on a few of them is theirs, and not the phone's",
    source: "own choice",
  },
  witnessMoved: {
    value: 1.5,
    unit: "standard errors by which a fundamental's group mean lies on its side",
    reason: "a fundamental that stayed where it was has not moved with the others",
    source: "own choice",
  },
  misfit: {
    value: 2,
    unit: "mean square of what the shift leaves, in squared standard errors",
    reason:
      "fundamentals out of step with a phone off to the side were moved by something else, as by one drill for all",
    source: "own choice, checked by own simulation",
  },
} as const satisfies Readonly<Record<string, FingerprintThreshold>>;

type Name = keyof typeof GROUP_JUMP_THRESHOLDS;

/** The thresholds in force. */
export const GROUP_JUMP = Object.fromEntries(
  Object.entries(GROUP_JUMP_THRESHOLDS).map(([name, threshold]) => [name, threshold.value]),
) as Readonly<Record<Name, number>>;
