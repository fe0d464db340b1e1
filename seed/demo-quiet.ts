import type { ClubKind } from "@/lib/domain/club-group";
import type { FundamentalId } from "@/lib/domain/fundamental";
import { usualNoise } from "./demo-noise";
import {
  type CameraPlan,
  DEMO_LAST_DAY,
  plainSession,
  type SessionPlan,
  SQUARE,
  type StudentPlan,
  type TrackPlan,
  UNKNOWN,
} from "./demo-plan";
import { flat, type LevelPath, relapse, step } from "./level-path";
import { between, normal, oneOf, type Random, randomFrom, whole } from "./random";
import { swingCounts, unevenDays } from "./simulate";

/** Seed of the quiet students; the first one tried. */
export const QUIET_SEED = 2026;

/** Share of the quiet students' tracks that truly change. */
export const QUIET_CHANGING = 0.15;

const ALIASES =
  "Abe Ada Alf Amy Ben Bo Cam Cleo Dan Dee Ed Elsa Finn Flo Gil Gwen Hal Ida Ike Isa Jed Joy Kai Kit Lea Len Lou Max Mia Moe Nan Ned Noa Ola Oz Pam Pip Ray Rob Roz Sal Sid Sue Tam Ted Tia Una Vic Wes Zoe".split(
    " ",
  );

/** Middle and spread of students' levels, in the unit. Own choice near the goal bands. */
const LEVELS: Readonly<Partial<Record<FundamentalId, readonly [number, number]>>> = {
  "trail-v": [57, 16],
  "foot-line": [0.5, 3],
  "setup-tilt": [6, 3],
  "posture-bend": [37, 4],
  hinge: [88, 6],
  "hip-sway": [3, 5],
  "tilt-kept": [2, 3],
  "impact-tilt": [14, 4],
  "own-lead-heel": [12, 3],
};

const BALL: Readonly<Record<ClubKind, number>> = { "short-iron": 53, iron: 57, hybrid: 69, wood: 79, driver: 91 };

/** Clubs of each kind. */
export const CLUBS: Readonly<Record<ClubKind, readonly string[]>> = {
  "short-iron": ["9-iron", "pitching wedge"],
  iron: ["6-iron", "7-iron", "8-iron"],
  hybrid: ["4-hybrid", "5-hybrid"],
  wood: ["5-wood"],
  driver: ["driver"],
};

const NOTES = [
  "Two thin, no fat ones.",
  "Not a shank all day.",
  "Pushed a few; strike fine.",
  "Heavy rain before, ground soft.",
  "Toe of the shoe off the stick, says mother.",
  "Nothing special.",
  "Solid effort, few solid balls.",
];

function camera(random: Random): CameraPlan {
  const draw = random.uniform();
  if (draw < 0.7) return SQUARE;
  if (draw < 0.86) return UNKNOWN;
  if (draw < 0.93) return { ...SQUARE, squareness: "off", offBy: whole(random, 3, 7) };
  return { ...SQUARE, placement: "same", placementLabel: "the usual spot" };
}

function downTheLine(random: Random): CameraPlan | undefined {
  const draw = random.uniform();
  if (draw < 0.08) return undefined;
  if (draw < 0.8) return SQUARE;
  return draw < 0.93 ? UNKNOWN : { ...SQUARE, squareness: "off", offBy: whole(random, 8, 25) };
}

/** One film of a quiet student. */
export function quietSession(day: number, swings: number, random: Random): SessionPlan {
  const line = downTheLine(random);
  const balls = random.uniform() < 0.3 ? whole(random, 10, 25) : null;
  return {
    ...plainSession(day, swings),
    circumstance: random.uniform() < 0.04 ? "in-lesson" : "unaided",
    note: random.uniform() < 0.12 ? oneOf(random, NOTES) : null,
    marks: random.uniform() < 0.05 ? [oneOf(random, ["wind", "tired"])] : [],
    daysSincePractice: random.uniform() < 0.5 ? whole(random, 0, 12) : null,
    balls,
    solidShare: 0.45,
    cameras: { "face-on": camera(random), ...(line ? { "down-the-line": line } : {}) },
  };
}

/** A modest true change between two levels. */
function changedPath(level: number, to: number, count: number, random: Random): LevelPath {
  const at = whole(random, Math.floor(count / 3), Math.ceil((2 * count) / 3));
  const shape = random.uniform();
  if (shape < 0.5) return step(level, to, at);
  if (shape < 0.75) return { kind: "ramp", from: level, to, start: at - 2, end: Math.min(count - 1, at + 3) };
  if (shape < 0.9) return { kind: "exponential", from: level, to, start: at - 1, scale: 3 };
  return relapse(level, to, at, level, Math.min(count - 1, at + 4));
}

/** Who changes was coached there: off the middle at first and mostly toward it; by two to four times what a session mean wavers by. */
function quietPath(middle: number, spread: number, unit: number, count: number, random: Random): LevelPath {
  const usual = middle + spread * normal(random);
  const size = unit * between(random, 2, 4);
  const inward = random.uniform() < 0.75;
  if (random.uniform() >= QUIET_CHANGING) return flat(usual);
  const side = usual < middle ? -1 : 1;
  const far = middle + side * Math.max(Math.abs(usual - middle), size);
  return inward
    ? changedPath(far, far - side * size, count, random)
    : changedPath(usual, usual + side * size, count, random);
}

/** One fundamental of a quiet student over so many films. */
export function quietTrack(
  id: FundamentalId,
  plan: { readonly clubGroup: ClubKind; readonly wildness: number },
  count: number,
  random: Random,
): TrackPlan {
  const [middle, spread] = LEVELS[id] ?? [BALL[plan.clubGroup], 4];
  const usual = usualNoise(id);
  const unit = plan.wildness * Math.hypot(usual.daySd, usual.swingSd / 2);
  return {
    fundamentalId: id,
    path: quietPath(middle, spread, unit, count, random),
    aidedLevel: null,
    missed: 0.06,
    notMeasurable: 0.02,
  };
}

/** Read of everybody. */
export const ALWAYS_READ: readonly FundamentalId[] = ["trail-v", "setup-tilt", "hinge", "hip-sway", "tilt-kept"];
/** Read of three quarters of the students. */
export const OFTEN_READ: readonly FundamentalId[] = ["foot-line", "posture-bend", "ball-position"];
/** Read of three tenths. */
export const SELDOM_READ: readonly FundamentalId[] = ["impact-tilt", "own-lead-heel"];

function quietPlan(alias: string, number: number, clubGroup: ClubKind): StudentPlan {
  const random = randomFrom(QUIET_SEED, 100 + number);
  const birthYear = random.uniform() < 0.4 ? whole(random, 2009, 2016) : whole(random, 1950, 2005);
  const young = birthYear >= 2009;
  const wildness = (young ? 1.25 : 1) * Math.exp(0.18 * normal(random));
  const wanted = whole(random, 8, 18);
  const days = unevenDays(whole(random, 0, 25), wanted, 3, 40, random).filter((day) => day <= DEMO_LAST_DAY);
  const swings = swingCounts(days.length, 3, 8, random);
  const read = [
    ...ALWAYS_READ,
    ...OFTEN_READ.filter(() => random.uniform() < 0.75),
    ...SELDOM_READ.filter(() => random.uniform() < 0.3),
  ];
  return {
    id: `s${number}`,
    alias,
    birthYear,
    hand: random.uniform() < 0.1 ? "left" : "right",
    zone: "Europe/Berlin",
    club: oneOf(random, CLUBS[clubGroup]),
    clubGroup,
    signRule: "neutral",
    wildness,
    correlation: between(random, 0, 0.3),
    consentGivenBy: young ? "parent, on paper" : "in person, on paper",
    sessions: days.map((day, i) => quietSession(day, swings[i] as number, random)),
    tracks: read.map((id) => quietTrack(id, { clubGroup, wildness }, days.length, random)),
    heights: [],
    events: [],
    assignments: [],
    corrections: [],
    expected: [],
  };
}

/** Fifty students without a story: the first thirty with irons, ten with hybrids, ten with short irons. */
export const QUIET_STUDENTS: readonly StudentPlan[] = ALIASES.map((alias, i) =>
  quietPlan(alias, 11 + i, i < 30 ? "iron" : i < 40 ? "hybrid" : "short-iron"),
);
