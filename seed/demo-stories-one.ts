import type { BuiltInId } from "@/lib/domain/catalogue";
import {
  type CameraPlan,
  type Expectation,
  SECOND_READER,
  type SessionPlan,
  SQUARE,
  type StudentPlan,
  sessionsAt,
  sideTrack,
  storyTrack,
  UNKNOWN,
} from "./demo-plan";
import { exponentialPath, flat, relapse, step } from "./level-path";

const HOME = { zone: "Europe/Berlin", heights: [], events: [], assignments: [], corrections: [] } as const;

const faceOnUnknown: Partial<SessionPlan> = { cameras: { "face-on": UNKNOWN, "down-the-line": SQUARE } };

/** Strong grip mended by a drill: a true step. */
export const ARI: StudentPlan = {
  ...HOME,
  id: "s01",
  alias: "Ari",
  birthYear: 2014,
  hand: "right",
  club: "7-iron",
  clubGroup: "iron",
  signRule: "neutral",
  wildness: 1.3,
  correlation: 0.1,
  consentGivenBy: "mother, on paper",
  sessions: sessionsAt([3, 12, 20, 32, 41, 52, 60, 73, 85, 97, 118, 131, 152, 178], [5, 4, 6, 5, 5, 3, 6], {
    0: { note: "First films. Knuckles hidden, three of the lead hand seen." },
    1: { ...faceOnUnknown, swingNotes: { 2: "not fat this time, a bit thin" } },
    3: { note: "Grip talked over, drill shown after the last swing.", balls: 18, solidShare: 0.35 },
    4: { daysSincePractice: 1, note: "New grip feels odd, no shanks though.", balls: 20, solidShare: 0.3 },
    6: { daysSincePractice: 2, swingNotes: { 1: "hooked it, strike was fine", 4: "pure" }, balls: 20, solidShare: 0.4 },
    8: { daysSincePractice: 4, balls: 20, solidShare: 0.45 },
    9: { daysSincePractice: 9, note: "Drill put away for a week. Grip still there." },
    11: { daysSincePractice: 12, balls: 20, solidShare: 0.5 },
    13: { daysSincePractice: 14, marks: ["wind"] },
  }),
  tracks: [
    storyTrack("trail-v", step(140, 70, 4)),
    sideTrack("lead-v", 75),
    sideTrack("foot-line", 1),
    sideTrack("setup-tilt", 5),
    sideTrack("ball-position", 57),
    storyTrack("hinge", step(71, 81, 9)),
    sideTrack("hip-sway", 4),
  ],
  assignments: [{ drill: "d01", start: 33, end: 96, dose: "", minutesADay: 10, daysAWeek: 5, remeasure: 54 }],
  expected: [
    {
      fundamentalId: "trail-v",
      words: ["gain"],
      earlier: [],
      provedBetween: [5, 7],
      listed: "listed",
      ownedAt: [9, 13],
    },
    { fundamentalId: "hinge", words: ["gain", "open"], earlier: [], provedBetween: null, listed: "either" },
  ],
};

/** Hinge that grows slowly; films change hands late in the season. */
export const BEA: StudentPlan = {
  ...HOME,
  id: "s02",
  alias: "Bea",
  birthYear: 1992,
  hand: "left",
  club: "8-iron",
  clubGroup: "iron",
  signRule: "neutral",
  wildness: 1,
  correlation: 0.2,
  consentGivenBy: "herself, on paper",
  sessions: sessionsAt(
    [2, 9, 14, 23, 35, 41, 49, 63, 70, 75, 85, 94, 100, 111, 132, 136, 144, 151, 160, 172, 178, 186],
    [5, 6, 4, 5, 7, 5],
    {
      3: { daysSincePractice: 1, balls: 24, solidShare: 0.4 },
      5: { ...faceOnUnknown, note: "Filmed by a stranger on the range, phone on a bag." },
      8: { note: "Heavy arms today, contact clean.", balls: 24, solidShare: 0.45 },
      12: { circumstance: "in-lesson", note: "Filmed during the lesson, right after the freeze." },
      15: { balls: 24, solidShare: 0.55, swingNotes: { 3: "off the toe? no, middled" } },
      ...Object.fromEntries([18, 19, 20, 21].map((i) => [i, { reader: SECOND_READER, daysSincePractice: 3 }])),
    },
  ),
  tracks: [
    sideTrack("trail-v", 60),
    sideTrack("setup-tilt", 6),
    sideTrack("posture-bend", 36),
    storyTrack("hinge", exponentialPath(64, 84, 3, 7)),
    sideTrack("shaft-line", 3),
    sideTrack("hip-sway", 3),
    storyTrack("tilt-kept", flat(2)),
  ],
  events: [{ kind: "reader-change", day: 155, note: "Coach Lark", rebaselines: [] }],
  assignments: [{ drill: "d04", start: 24, end: null, dose: "", minutesADay: 15, daysAWeek: 4, remeasure: 45 }],
  expected: [{ fundamentalId: "hinge", words: ["gain"], earlier: null, provedBetween: [5, 19], listed: "listed" }],
};

/** Nothing happens; the last three films look like it. */
export const CAL: StudentPlan = {
  ...HOME,
  id: "s03",
  alias: "Cal",
  birthYear: 1975,
  hand: "right",
  club: "6-iron",
  clubGroup: "iron",
  signRule: "neutral",
  wildness: 1.1,
  correlation: 0.2,
  consentGivenBy: "himself, on paper",
  sessions: sessionsAt([6, 19, 33, 41, 62, 74, 93, 107, 128, 149, 170, 187], [4, 3, 5, 4, 6, 3], {
    2: faceOnUnknown,
    4: { balls: 16, solidShare: 0.5, note: "No thin ones, two fat. Tired.", marks: ["tired"] },
    6: { cameras: { "face-on": { ...SQUARE, squareness: "off", offBy: 12 }, "down-the-line": SQUARE } },
    9: { balls: 16, solidShare: 0.5 },
    11: { note: "Says the lean feels better. Flush is his word for everything.", balls: 16, solidShare: 0.5 },
  }),
  tracks: [
    sideTrack("trail-v", 45),
    sideTrack("foot-line", -1),
    storyTrack("setup-tilt", flat(2)),
    sideTrack("posture-bend", 33),
    sideTrack("hinge", 88),
    storyTrack("tilt-kept", flat(0)),
  ],
  assignments: [
    { drill: "d05", start: 108, end: null, dose: "set-ups before a mirror", reps: 10, daysAWeek: 5, remeasure: 129 },
  ],
  expected: [
    {
      fundamentalId: "setup-tilt",
      words: ["open"],
      earlier: [],
      provedBetween: null,
      listed: "unlisted",
      lure: { count: 3, last: [3.6, 5.4], before: [1, 2.4] },
    },
  ],
};

const withSticks: Partial<SessionPlan> = { circumstance: "aid-in-view", aid: "two sticks at the toes" };

/** Feet put straight, then forgotten while the hips are worked on. */
export const DOT: StudentPlan = {
  ...HOME,
  id: "s04",
  alias: "Dot",
  birthYear: 2016,
  hand: "right",
  club: "junior 7-iron",
  clubGroup: "iron",
  signRule: "neutral",
  wildness: 1.4,
  correlation: 0.1,
  consentGivenBy: "father, on paper",
  sessions: sessionsAt([4, 15, 26, 31, 45, 54, 57, 68, 81, 94, 107, 121, 133, 146, 159, 171, 185], [5, 4, 5, 6, 4], {
    3: withSticks,
    5: { daysSincePractice: 2 },
    6: { ...withSticks, note: "Sticks left in by mistake." },
    8: { note: "Feet good. On to the hips.", balls: 15, solidShare: 0.3, daysSincePractice: 8 },
    10: { swingNotes: { 1: "topped", 2: "not topped!" }, balls: 15, solidShare: 0.35 },
    12: { note: "Toe line drifted, not the strike.", daysSincePractice: 1 },
    15: { balls: 15, solidShare: 0.35 },
  }),
  tracks: [
    storyTrack("foot-line", relapse(10, 1, 5, 10, 13)),
    sideTrack("trail-v", 70),
    sideTrack("setup-tilt", 4),
    sideTrack("posture-bend", 34),
    sideTrack("ball-position", 55),
    { ...storyTrack("hip-sway", step(14, 9, 11)), missed: 0.05 },
  ].map((track) => (track.fundamentalId === "foot-line" ? { ...track, aidedLevel: 0 } : track)),
  assignments: [
    { drill: "d02", start: 27, end: 80, dose: "", minutesADay: 10, daysAWeek: 4, remeasure: 48 },
    { drill: "d03", start: 82, end: null, dose: "", minutesADay: 10, daysAWeek: 4, remeasure: 103 },
  ],
  expected: [
    { fundamentalId: "foot-line", words: ["slip"], earlier: ["gain"], provedBetween: [14, 15], listed: "listed" },
  ],
};

const siblingFilms: CameraPlan = {
  placement: "same",
  placementLabel: "sister, from the bench",
  squareness: "unknown",
  offBy: null,
  trueYaw: 8,
  placedBy: "his sister",
  setAsideReason: null,
};
const bySister: Partial<SessionPlan> = { cameras: { "face-on": siblingFilms, "down-the-line": SQUARE } };

/** No change is claimed: the films say nothing, or that nothing large changed. */
const unclaimed = (fundamentalId: BuiltInId): Expectation => ({
  fundamentalId,
  words: ["open", "steady"],
  earlier: [],
  provedBetween: null,
  listed: "unlisted",
});

/** Everything leans more from the day on which the sister films from the side. */
export const ELI: StudentPlan = {
  ...HOME,
  id: "s05",
  alias: "Eli",
  birthYear: 2011,
  hand: "left",
  club: "5-iron",
  clubGroup: "iron",
  signRule: "picture",
  wildness: 1.1,
  correlation: 0.1,
  consentGivenBy: "mother, on paper",
  sessions: sessionsAt([1, 10, 24, 37, 49, 66, 78, 92, 110, 124, 141, 163, 180], [5, 5, 4, 6, 3], {
    8: { ...bySister, note: "Sister films from today." },
    9: bySister,
    10: { ...bySister, swingNotes: { 2: "pulled it, not heel" } },
    11: { ...bySister, balls: 20, solidShare: 0.5 },
    12: bySister,
  }),
  tracks: [
    sideTrack("foot-line", 2),
    storyTrack("setup-tilt", flat(5)),
    sideTrack("posture-bend", 35),
    storyTrack("hinge", flat(84)),
    sideTrack("hip-sway", 2),
    storyTrack("tilt-kept", flat(-1)),
    storyTrack("impact-tilt", flat(12)),
  ],
  expected: [
    { ...unclaimed("setup-tilt"), lure: { count: 5, last: [7.5, 14], before: [4, 6] } },
    { ...unclaimed("top-tilt"), lure: { count: 5, last: [6.5, 14], before: [3, 5] } },
    { ...unclaimed("impact-tilt"), lure: { count: 5, last: [14, 22], before: [11, 13] } },
    unclaimed("hinge"),
    unclaimed("tilt-kept"),
  ],
};
