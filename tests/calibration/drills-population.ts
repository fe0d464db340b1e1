import { dayFromNumber, dayNumber } from "@/lib/domain/calendar-day";
import type { ComparedTrack } from "@/lib/domain/compared-track";
import { normalQuantile } from "@/lib/stats/normal-distribution";
import { seededChances } from "@/tests/lib/stats/seeded-normals";

/** An academy whose truth is known. Effects and rates are in U, the sd of one session's mean. */
export interface SimulatedAcademy {
  readonly name: string;
  readonly students: number;
  /** True effect of each of the drills. */
  readonly effects: readonly number[];
  /** Mean of the coaches' natural rates, a session. */
  readonly naturalRate: number;
  /** Share of students after a bad run who get a drill at the very least; the worse the run, the more. */
  readonly leastDrilled: number;
  /** Whether who gets none is marked as waiting. */
  readonly waiting: "marked" | "unmarked";
  /** Sd of a drill's effect between students. */
  readonly effectSpread: number;
  /** Whether the quickest learners quietly get the first drill. */
  readonly hiddenChoice: "none" | "fast-learners";
}

const COACHES = 6;
const SESSIONS = 26;
const DAY_SD = 1.5;
const SWING_SD = Math.sqrt(3 * 3 + 1);
const CAMERA_SD = 1;
const SWINGS = 5;
const PHI = 0.2;

/** Sd of one session's mean, in the unit. */
export const UNIT_SD = Math.sqrt(DAY_SD ** 2 + SWING_SD ** 2 / SWINGS + CAMERA_SD ** 2);

const DRILL_WEIGHTS = [8, 6, 5, 4, 3, 2, 1.5, 1];
const FIRST_DAY = dayNumber("2026-01-05");

/** The tracks of one seeded academy. */
export function drawAcademy(academy: SimulatedAcademy, seed: number): readonly ComparedTrack[] {
  const chance = seededChances(seed);
  const normal = () => normalQuantile(chance());
  const rates = Array.from({ length: COACHES }, () => academy.naturalRate + 0.03 * normal());
  const leanings = rates.map(() => DRILL_WEIGHTS.map((weight) => weight * Math.exp(0.5 * normal())));
  return Array.from({ length: academy.students }, (_, number) => {
    const coach = Math.floor(chance() * COACHES);
    const ownRate = 0.03 * normal();
    const rate = (rates[coach] as number) + ownRate;
    const level = 2 * normal();
    const leaning = leanings[coach] as readonly number[];
    const values: number[] = [];
    const sessions: ComparedTrack["sessions"][number][] = [];
    let day = FIRST_DAY + Math.floor(chance() * 20);
    let ofDay = DAY_SD * normal();
    let decided: { readonly drill: number | null; readonly day: number } | null = null;
    let effect = 0;
    for (let at = 0; at < SESSIONS; at++) {
      const run = at < 5 ? null : meanOf(values.slice(-3));
      const depth = run === null ? 0 : (meanOf(values.slice(0, -3)) - run) / UNIT_SD;
      if (decided === null && run !== null && depth > 0.3) {
        const drilled = chance() < academy.leastDrilled + (1 - academy.leastDrilled) * Math.min(1, (depth - 0.3) / 1.5);
        const quick = academy.hiddenChoice === "fast-learners" && ownRate > 0.01;
        const drill = drilled ? (quick && chance() < 0.9 ? 0 : pick(leaning, chance())) : null;
        decided = { drill, day };
        if (drill !== null) effect = (academy.effects[drill] ?? 0) + academy.effectSpread * normal();
      }
      ofDay = PHI * ofDay + Math.sqrt(1 - PHI * PHI) * DAY_SD * normal();
      const state = (level + rate * at + effect) * UNIT_SD + ofDay + CAMERA_SD * normal();
      const swings = Array.from({ length: SWINGS }, () => state + SWING_SD * normal());
      values.push(meanOf(swings));
      sessions.push({ date: dayFromNumber(day), captureSd: CAMERA_SD, swings });
      day += 5 + Math.floor(chance() * 12);
    }
    const start = decided === null ? null : dayFromNumber(decided.day);
    const drill = decided?.drill ?? null;
    const waits = start !== null && drill === null && academy.waiting === "marked";
    return {
      id: `t${number}`,
      student: `s${number}`,
      coach: `c${coach}`,
      better: "up",
      sessions,
      drills: start === null || drill === null ? [] : [{ drill: `d${drill}`, start }],
      ...(waits ? { waiting: [{ from: start, to: dayFromNumber(day) }] } : {}),
    };
  });
}

function meanOf(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}

function pick(weights: readonly number[], chance: number): number {
  let left = chance * weights.reduce((sum, weight) => sum + weight, 0);
  for (const [index, weight] of weights.entries()) {
    left -= weight;
    if (left < 0) return index;
  }
  return weights.length - 1;
}

const NONE = [0, 0, 0, 0, 0, 0, 0, 0];
const TWO = [0, 0.8, 0, 0, 0.8, 0, 0, 0];
const PLAIN: SimulatedAcademy = {
  ...{ name: "eight useless drills", students: 300, effects: NONE, naturalRate: 0.04, leastDrilled: 0.5 },
  ...{ waiting: "marked", effectSpread: 0, hiddenChoice: "none" },
};

/** The kinds of academy that a calibration looks at. */
export const ACADEMIES: readonly SimulatedAcademy[] = [
  PLAIN,
  { ...PLAIN, name: "two of eight worth .8 U", effects: TWO },
  { ...PLAIN, name: "useless, nobody gains by nature", naturalRate: 0 },
  { ...PLAIN, name: "useless, few wait", leastDrilled: 0.85 },
  { ...PLAIN, name: "useless, 120 students", students: 120 },
  { ...PLAIN, name: "two of eight, effects differ by .6 U between students", effects: TWO, effectSpread: 0.6 },
  { ...PLAIN, name: "useless, nobody marked as waiting", waiting: "unmarked" },
  { ...PLAIN, name: "useless, quick learners get one drill", hiddenChoice: "fast-learners" },
];
