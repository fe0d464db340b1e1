import { type SessionPlan, SQUARE, type StudentPlan, sessionsAt, sideTrack, storyTrack, UNKNOWN } from "./demo-plan";
import { flat, type LevelPath, step } from "./level-path";

const HOME = { zone: "Europe/Berlin", heights: [], events: [], assignments: [], corrections: [] } as const;

const faceOnUnknown: Partial<SessionPlan> = { cameras: { "face-on": UNKNOWN, "down-the-line": SQUARE } };

/** Hips move less, and then no further: a plateau short of the band. */
export const FAY: StudentPlan = {
  ...HOME,
  id: "s06",
  alias: "Fay",
  birthYear: 1984,
  hand: "right",
  club: "4-hybrid",
  clubGroup: "hybrid",
  signRule: "neutral",
  wildness: 0.9,
  correlation: 0.1,
  consentGivenBy: "herself, on paper",
  sessions: sessionsAt([5, 16, 30, 38, 52, 63, 80, 95, 109, 127, 143, 166, 184], [6, 5, 7, 5, 6], {
    2: { stanceWidthCm: 48 },
    5: { daysSincePractice: 2, balls: 22, solidShare: 0.5 },
    7: { swingNotes: { 1: "skied one, not the next" }, daysSincePractice: 3 },
    9: { balls: 22, solidShare: 0.5, note: "Drives home the point: the wall is no help any more." },
    11: { daysSincePractice: 5, marks: ["wind"] },
  }),
  tracks: [
    sideTrack("trail-v", 50),
    sideTrack("setup-tilt", 8),
    sideTrack("posture-bend", 35),
    sideTrack("ball-position", 68),
    sideTrack("hinge", 86),
    storyTrack("hip-sway", step(18, 11, 5)),
    storyTrack("tilt-kept", flat(2)),
  ],
  assignments: [{ drill: "d03", start: 39, end: null, dose: "", minutesADay: 15, daysAWeek: 5, remeasure: 60 }],
  corrections: [
    {
      session: 2,
      swing: 2,
      fundamentalId: "hip-sway",
      typed: "8.6",
      mendedOn: 31,
      why: "Typed in centimetres; the stance is 48 cm wide.",
    },
  ],
  expected: [{ fundamentalId: "hip-sway", words: ["gain"], earlier: [], provedBetween: [6, 9], listed: "listed" }],
};

const drift = (from: number, to: number): LevelPath => ({ kind: "ramp", from, to, start: 4, end: 9 });

/** Grows seven centimetres and gets new clubs: a new start, not a relapse. */
export const GUS: StudentPlan = {
  ...HOME,
  id: "s07",
  alias: "Gus",
  birthYear: 2013,
  hand: "right",
  club: "7-iron",
  clubGroup: "iron",
  signRule: "neutral",
  wildness: 1.2,
  correlation: 0.1,
  consentGivenBy: "mother, on paper",
  sessions: sessionsAt(
    [2, 11, 20, 31, 40, 52, 60, 71, 84, 92, 105, 113, 124, 133, 141, 153, 164, 174, 188],
    [5, 4, 6, 5, 3],
    Object.fromEntries([
      ...[40, 40, 41, 41, 42, 43, 43, 44, 45, 46, 46, 46, 46, 47, 46, 46, 47, 47, 47].map((cm, i) => [
        i,
        {
          stanceWidthCm: cm,
          note: i === 10 ? "New clubs, an inch longer." : null,
          marks: i === 10 ? ["new-club"] : [],
        },
      ]),
    ]),
  ),
  tracks: [
    sideTrack("trail-v", 55),
    sideTrack("foot-line", 0),
    sideTrack("setup-tilt", 6),
    storyTrack("posture-bend", drift(39, 33)),
    storyTrack("ball-position", drift(60, 54)),
    sideTrack("hinge", 89),
    sideTrack("hip-sway", 5),
  ],
  heights: [
    { day: 0, cm: 151 },
    { day: 45, cm: 153.5 },
    { day: 84, cm: 156 },
    { day: 105, cm: 157 },
    { day: 188, cm: 158 },
  ],
  events: [
    {
      kind: "growth",
      day: 105,
      note: "Six centimetres since March; posture and ball place begin anew with the new clubs.",
      rebaselines: ["posture-bend", "ball-position"],
    },
    { kind: "new-club", day: 105, note: "New irons, an inch longer.", rebaselines: [] },
  ],
  assignments: [{ drill: "d07", start: 106, end: 140, dose: "with closed eyes", reps: 5, daysAWeek: 5 }],
  expected: (["posture-bend", "ball-position"] as const).map((fundamentalId) => ({
    fundamentalId,
    words: ["open", "steady"],
    earlier: [],
    provedBetween: null,
    listed: "unlisted",
  })),
};

/** Too few films to say anything. */
export const HANA: StudentPlan = {
  ...HOME,
  id: "s08",
  alias: "Hana",
  birthYear: 1959,
  hand: "left",
  club: "driver",
  clubGroup: "driver",
  signRule: "picture",
  wildness: 1.2,
  correlation: 0.1,
  consentGivenBy: "herself, on paper",
  sessions: sessionsAt([20, 62, 110, 171], [3], {
    1: { ...faceOnUnknown, note: "Nothing heavy, nothing thin, she says; the balls say toe." },
    2: { balls: 12, solidShare: 0.4 },
    3: { balls: 12, solidShare: 0.5 },
  }),
  tracks: [
    sideTrack("trail-v", 62),
    storyTrack("setup-tilt", flat(7)),
    storyTrack("posture-bend", flat(31)),
    storyTrack("ball-position", flat(84)),
    storyTrack("hinge", flat(78)),
    storyTrack("hip-sway", flat(6)),
    storyTrack("own-lead-heel", flat(14)),
  ].map((track) => ({ ...track, missed: 0 })),
  expected: (["setup-tilt", "posture-bend", "ball-position", "hinge", "hip-sway"] as const).map((fundamentalId) => ({
    fundamentalId,
    words: ["open"],
    earlier: [],
    provedBetween: null,
    listed: "unlisted",
  })),
};

/** Owned for ten films, lost over a month off. */
export const IVO: StudentPlan = {
  ...HOME,
  id: "s09",
  alias: "Ivo",
  birthYear: 1998,
  hand: "right",
  club: "7-iron",
  clubGroup: "iron",
  signRule: "neutral",
  wildness: 0.9,
  correlation: 0.1,
  consentGivenBy: "himself, on paper",
  sessions: sessionsAt([0, 9, 21, 29, 38, 50, 59, 69, 81, 92, 126, 134, 143, 151, 163, 174, 186], [6, 5, 8, 6, 5, 7], {
    ...Object.fromEntries(
      Array.from({ length: 10 }, (_, i) => [i, { daysSincePractice: i === 0 ? null : 7 + (i % 4) }]),
    ),
    10: { daysSincePractice: 30, note: "A month without a club.", balls: 25, solidShare: 0.5 },
    11: {
      daysSincePractice: 2,
      balls: 25,
      solidShare: 0.5,
      swingNotes: { 4: "chunked? no, laid it off the turf clean" },
    },
    13: { daysSincePractice: 1, circumstance: "in-lesson" },
    14: { daysSincePractice: 2 },
  }),
  tracks: [
    sideTrack("trail-v", 52),
    sideTrack("foot-line", 1),
    sideTrack("setup-tilt", 6),
    sideTrack("hinge", 90),
    sideTrack("hip-sway", 2),
    storyTrack("tilt-kept", step(1.5, -4, 10)),
    sideTrack("hip-shift", -15),
    sideTrack("own-lead-heel", 11),
  ].map((track) => (track.fundamentalId === "setup-tilt" ? { ...track, missed: 0 } : track)),
  events: [{ kind: "break", day: 93, endDay: 125, note: "A month away.", rebaselines: [] }],
  assignments: [{ drill: "d06", start: 135, end: null, dose: "stops, then ten balls", reps: 10, daysAWeek: 3 }],
  expected: [
    {
      fundamentalId: "tilt-kept",
      words: ["slip"],
      earlier: [],
      provedBetween: [11, 12],
      listed: "listed",
      ownedAt: [9],
    },
  ],
};

/** One thing up, another down: hips stay, the lean is lost and the strike with it. */
export const JUN: StudentPlan = {
  ...HOME,
  id: "s10",
  alias: "Jun",
  birthYear: 2010,
  hand: "right",
  club: "9-iron",
  clubGroup: "short-iron",
  signRule: "neutral",
  wildness: 1,
  correlation: 0.1,
  consentGivenBy: "father, on paper",
  sessions: sessionsAt(
    [3, 13, 25, 33, 44, 57, 66, 79, 90, 103, 117, 128, 140, 155, 169, 183],
    [5, 6, 5, 7, 4],
    Object.fromEntries(
      Array.from({ length: 16 }, (_, i) => [
        i,
        {
          balls: 25,
          solidShare: i < 6 ? 0.6 : 0.45,
          daysSincePractice: i < 6 ? null : 2,
          ...(i === 7 ? { circumstance: "in-lesson" as const } : {}),
          ...(i === 9 ? { swingNotes: { 2: "thin, not shanked", 3: "drop-kick" } } : {}),
          ...(i === 12 ? { note: "Hips quiet, balls not: more fat than clean.", ...faceOnUnknown } : {}),
        },
      ]),
    ),
  ),
  tracks: [
    sideTrack("trail-v", 58),
    sideTrack("foot-line", 0),
    storyTrack("setup-tilt", flat(6)),
    sideTrack("hinge", 91),
    storyTrack("hip-sway", step(14, 5, 6)),
    storyTrack("tilt-kept", step(1, -6, 6)),
    sideTrack("head-drift", 6),
  ],
  assignments: [{ drill: "d03", start: 58, end: 141, dose: "", minutesADay: 15, daysAWeek: 5 }],
  expected: [
    { fundamentalId: "hip-sway", words: ["gain"], earlier: [], provedBetween: [7, 10], listed: "listed" },
    { fundamentalId: "tilt-kept", words: ["slip"], earlier: [], provedBetween: [7, 11], listed: "listed" },
  ],
};
