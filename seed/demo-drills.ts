import type { ClubGroup } from "@/lib/domain/club-group";
import type { Fundamental, FundamentalId } from "@/lib/domain/fundamental";
import type { GoalBand } from "@/lib/domain/goal-band";

/** A drill of the demo academy, invented for it. */
export interface DemoDrill {
  readonly id: string;
  readonly name: string;
  readonly fundamentalId: FundamentalId;
  readonly how: string;
  readonly cautions: string;
  /** As it is usually given; absent: nobody has said. */
  readonly dose?: string;
  readonly reps?: number;
  readonly minutesADay?: number;
  readonly daysAWeek?: number;
  readonly remeasureDays?: number;
}

/** The drills of the demo academy. */
export const DEMO_DRILLS: readonly DemoDrill[] = [
  {
    id: "d01",
    name: "Crease to the ear",
    fundamentalId: "trail-v",
    how: "Close the trail hand so that the crease of thumb and finger points at the trail ear, lift the club, look, let go. Twenty times, then ten balls.",
    cautions: "Stop at any pain in the wrist or thumb.",
    ...{ dose: "then ten balls", reps: 20, minutesADay: 10, daysAWeek: 5, remeasureDays: 21 },
  },
  {
    id: "d02",
    name: "Two-stick rails",
    fundamentalId: "foot-line",
    how: "Lay two sticks along the target line, toes on one, ball beside the other. Step out and in again before each ball.",
    cautions: "Take the sticks away before a film: with a stick at the toes the film measures the stick.",
    ...{ minutesADay: 10, daysAWeek: 4, remeasureDays: 21 },
  },
  {
    id: "d03",
    name: "Wall at the hip",
    fundamentalId: "hip-sway",
    how: "Stand a hand's breadth from a wall on the trail side and turn to the top without leaning on it. Fifteen slow turns, then ten balls away from the wall.",
    cautions: "The upper body may start to hang toward the target: look at tilt kept as well.",
    ...{ dose: "slow turns, then ten balls", reps: 15, daysAWeek: 4, remeasureDays: 21 },
  },
  {
    id: "d04",
    name: "Half-way freeze",
    fundamentalId: "hinge",
    how: "Swing back until the lead arm is level and stop. Look: arm and club make a corner. Ten stops, then ten balls.",
    cautions: "Slowly; no forcing at the end of the wrist's reach.",
  },
  {
    id: "d05",
    name: "Button and buckle",
    fundamentalId: "setup-tilt",
    how: "Hang the club down from the shirt's middle button: the grip falls beside the buckle on the lead side. Ten set-ups.",
    cautions: "From the ground up, not by bending the back sideways.",
  },
  {
    id: "d06",
    name: "Keep the lean",
    fundamentalId: "tilt-kept",
    how: "At the top, stop and look in a window: the shirt seam leans as it did at the start. Ten stops, then ten balls.",
    cautions: "If there is any discomfort in the back, stop.",
  },
  {
    id: "d07",
    name: "Coin under the ball",
    fundamentalId: "ball-position",
    how: "Put a coin where the ball belongs, measured from both heels. Step in five times with closed eyes, look, mend.",
    cautions: "After a growth spurt measure the stance first.",
  },
];

const anyClub = { low: 2, high: 20 };
const GOALS: Readonly<Record<ClubGroup, typeof anyClub>> = {
  "short-iron": anyClub,
  iron: anyClub,
  hybrid: anyClub,
  wood: anyClub,
  driver: anyClub,
};

/** The demo academy's own fundamental. */
export const LEAD_HEEL: Fundamental = {
  id: "own-lead-heel",
  ownName: "Lead heel lift at the top",
  ownHow: "The height of the lead heel’s edge above the ground, against the width of the stance.",
  ownPlus: "heel higher",
  unit: "pct-stance",
  view: "face-on",
  checkpoint: "top",
  phase: "in-swing",
  order: 170,
  mirrors: "same",
  derivedFrom: null,
  plausible: { low: -5, high: 60 },
  goals: GOALS,
  readerSd: 1.5,
  cameraSdUnknown: 1.2,
  sensitivity: { yaw: 0.1, roll: 0.1, offset: 0 },
};

/** The demo academy's own goal bands: one, agreed with one student. */
export const DEMO_BANDS: readonly (GoalBand & { readonly id: string })[] = [
  {
    id: "g01",
    fundamentalId: "posture-bend",
    clubGroup: "driver",
    scope: "student",
    ageFrom: null,
    ageTo: null,
    studentId: "s08",
    from: "2026-04-20",
    low: 22,
    high: 38,
    reason: "Stands taller by choice; agreed with her on 20 April.",
  },
];
