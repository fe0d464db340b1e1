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
  /** Drills end; absent: they go on. */
  readonly stopped?: Stopped;
}

/** How drills end, and what of them stays. */
export interface Stopped {
  /** Days from the start to the end, drawn evenly between the two. */
  readonly shortest: number;
  readonly longest: number;
  /** True effect of each drill three weeks after its end and later, in U; between the two days it falls in a line. */
  readonly kept: readonly number[];
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
/** Days from an end to when only what stays is left. */
const FADES = 21;
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
    let decided: { readonly drill: number | null; readonly day: number; readonly end: number | null } | null = null;
    let effect = 0;
    let kept = 0;
    for (let at = 0; at < SESSIONS; at++) {
      const run = at < 5 ? null : meanOf(values.slice(-3));
      const depth = run === null ? 0 : (meanOf(values.slice(0, -3)) - run) / UNIT_SD;
      if (decided === null && run !== null && depth > 0.3) {
        const drilled = chance() < academy.leastDrilled + (1 - academy.leastDrilled) * Math.min(1, (depth - 0.3) / 1.5);
        const quick = academy.hiddenChoice === "fast-learners" && ownRate > 0.01;
        const drill = drilled ? (quick && chance() < 0.9 ? 0 : pick(leaning, chance())) : null;
        if (drill !== null) {
          const own = academy.effectSpread * normal();
          effect = (academy.effects[drill] ?? 0) + own;
          kept = (academy.stopped?.kept[drill] ?? 0) + own;
        }
        decided = { drill, day, end: drill === null ? null : endOf(academy.stopped, day, chance) };
      }
      const added = decided === null ? 0 : leftAt(day, decided.end, effect, kept);
      ofDay = PHI * ofDay + Math.sqrt(1 - PHI * PHI) * DAY_SD * normal();
      const state = (level + rate * at + added) * UNIT_SD + ofDay + CAMERA_SD * normal();
      const swings = Array.from({ length: SWINGS }, () => state + SWING_SD * normal());
      values.push(meanOf(swings));
      sessions.push({ date: dayFromNumber(day), captureSd: CAMERA_SD, swings });
      day += 5 + Math.floor(chance() * 12);
    }
    const start = decided === null ? null : dayFromNumber(decided.day);
    const drill = decided?.drill ?? null;
    const end = decided?.end ?? null;
    const waits = start !== null && drill === null && academy.waiting === "marked";
    return {
      id: `t${number}`,
      student: `s${number}`,
      coach: `c${coach}`,
      better: "up",
      sessions,
      drills:
        start === null || drill === null
          ? []
          : [{ drill: `d${drill}`, start, ...(end === null ? {} : { end: dayFromNumber(end) }) }],
      ...(waits ? { waiting: [{ from: start, to: dayFromNumber(day) }] } : {}),
    };
  });
}

function endOf(stopped: Stopped | undefined, start: number, chance: () => number): number | null {
  if (stopped === undefined) return null;
  return start + stopped.shortest + Math.floor(chance() * (stopped.longest - stopped.shortest + 1));
}

/** The whole effect until the end, then less and less of it, then what stays. */
function leftAt(day: number, end: number | null, effect: number, kept: number): number {
  if (end === null || day <= end) return effect;
  return kept + (effect - kept) * Math.max(0, 1 - (day - end) / FADES);
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

const STOPPED: SimulatedAcademy = {
  ...{ ...PLAIN, name: "drills worth .8 U, stopped after four to ten weeks", effects: NONE.map(() => 0.8) },
  stopped: { shortest: 28, longest: 70, kept: [0, 0.4, 0.8, 0, 0.4, 0.8, 0, 0.4] },
};

/** Academies whose drills end: of .8 U nothing, half or all stays, a third of the drills each. */
export const STOPPED_ACADEMIES: readonly SimulatedAcademy[] = [
  STOPPED,
  { ...STOPPED, name: "the same, nobody gains by nature", naturalRate: 0 },
  { ...STOPPED, name: "the same, few wait", leastDrilled: 0.85 },
  { ...STOPPED, name: "the same, 120 students", students: 120 },
  { ...STOPPED, name: "the same, effects differ by .6 U between students", effectSpread: 0.6 },
  { ...STOPPED, name: "the same, nobody marked as waiting", waiting: "unmarked" },
];
