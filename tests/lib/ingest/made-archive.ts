import fc from "fast-check";
import { ARCHIVE_FORMAT, ARCHIVE_VERSION, type Archive, type ArchivedStudent } from "@/lib/domain/archive";
import { dayFromNumber } from "@/lib/domain/calendar-day";
import { CATALOGUE } from "@/lib/domain/catalogue";
import { startNoiseModel } from "@/lib/stats/start-noise-model";
import { hostileText } from "./hostile-texts";

const NOISE = JSON.stringify(startNoiseModel("start"));

const instant = fc.integer({ min: 0, max: 2_000_000_000 }).map((seconds) => new Date(seconds * 1000).toISOString());
const day = fc.integer({ min: 18_000, max: 22_000 }).map(dayFromNumber);
const value = fc
  .oneof(fc.double({ noNaN: true, noDefaultInfinity: true }), fc.constantFrom(0, -0, 1e-300, 12.5))
  .map((x) => (x === 0 ? 0 : x));
const orNull = <T>(one: fc.Arbitrary<T>) => fc.option(one, { nil: null });
const fundamentalId = fc.constantFrom(...CATALOGUE.map((entry) => entry.id), "own-heel" as const);
const name = fc.tuple(fc.uuid(), hostileText).map(([id, text]) => `${id} ${text}`.trim());

/** Each fundamental at most once. */
function perFundamental<T>(make: fc.Arbitrary<T>, most: number) {
  return fc
    .uniqueArray(fc.tuple(fundamentalId, make), { maxLength: most, selector: ([id]) => id })
    .map((pairs) => pairs.sort(([a], [b]) => (a < b ? -1 : 1)).map(([id, made]) => ({ ...made, fundamentalId: id })));
}

const correction = fc.record({
  kind: fc.constantFrom("change" as const, "void" as const),
  value: orNull(value),
  typed: hostileText,
  who: hostileText,
  why: hostileText,
  correctedAt: instant,
});

const reading = fc.record({
  reader: hostileText,
  reread: fc.constant(0),
  value: orNull(value),
  typed: hostileText,
  unit: fc.constantFrom("deg" as const, "pct-stance" as const),
  signRule: fc.constantFrom("neutral" as const, "picture" as const),
  enteredAt: instant,
  corrections: fc.array(correction, { maxLength: 3 }).map((list) => list.map((one) => ({ ...one, place: 0 }))),
});

const session = fc.record({
  id: fc.uuid(),
  day,
  club: orNull(fc.constantFrom("7-iron", "old =1")),
  reader: hostileText,
  circumstance: fc.constantFrom("unaided" as const, "aid-in-view" as const),
  aid: orNull(hostileText),
  stanceWidthCm: orNull(value),
  daysSincePractice: orNull(fc.integer({ min: 0, max: 99 })),
  marks: fc.constantFrom("", "wind", "wind,tired"),
  note: orNull(hostileText),
  solid: orNull(fc.integer({ min: 0, max: 5 })),
  setAsideReason: orNull(hostileText),
  createdAt: instant,
  groupId: orNull(fc.uuid()),
  placementLabel: orNull(hostileText),
  film: orNull(hostileText),
  lean: orNull(value),
  statedCaptureSds: perFundamental(fc.record({ sd: fc.double({ min: 0, max: 9, noNaN: true }).map((x) => x || 0) }), 2),
  swings: fc.array(fc.record({ note: orNull(hostileText), readings: perFundamental(reading, 4) }), { maxLength: 4 }),
});

function sessionOf(made: typeof session extends fc.Arbitrary<infer T> ? T : never, sequence: number) {
  const { placementLabel, film, lean, swings, solid, ...facts } = made;
  const nothing = { offBy: null, acrossStickSlope: null, plumbLean: null, lensHeightCm: null, handsHeightCm: null };
  const seen = { distanceCm: null, besideHandsCm: null, framesPerSecond: null, shutterPerSecond: null };
  return {
    ...facts,
    sequence,
    clubGroup: "iron" as const,
    saidClubGroup: "iron" as const,
    solid,
    balls: solid === null ? null : 5,
    captures: [
      {
        ...nothing,
        ...seen,
        view: "face-on" as const,
        placement: "anew" as const,
        placementLabel,
        squareness: "unknown" as const,
        pointingStickLean: lean,
        placedBy: film,
        setAsideReason: null,
        filmReference: film,
      },
    ],
    swings: swings.map((swing, at) => ({ ...swing, number: at + 1 })),
    looks: [{ fundamentalId: "hinge" as const, clubGroup: "iron" as const, noiseModelName: "hinge/iron#1" }],
  };
}

/** Corrections are numbered through a student as they were made. */
function numbered(student: ArchivedStudent): ArchivedStudent {
  let place = 0;
  for (const { swings } of student.sessions)
    for (const { readings } of swings)
      for (const { corrections } of readings) for (const one of corrections) one.place = ++place;
  return student;
}

const byText = (a: string, b: string): number => (Buffer.from(a) < Buffer.from(b) ? -1 : 1);

const student = fc
  .record({
    id: fc.uuid(),
    alias: name,
    birthYear: orNull(fc.integer({ min: 1930, max: 2025 })),
    hand: fc.constantFrom("right" as const, "left" as const),
    clubs: hostileText,
    createdAt: instant,
    heights: fc.uniqueArray(fc.record({ day, cm: value }), { maxLength: 2, selector: (height) => height.day }),
    sessions: fc.array(session, { maxLength: 4 }),
    happened: fc.record({ id: fc.uuid(), day, note: hostileText, who: hostileText, recordedAt: orNull(instant) }),
    given: fc.record({
      id: fc.uuid(),
      startDay: day,
      dose: hostileText,
      who: hostileText,
      endWhy: orNull(hostileText),
      voidedAt: orNull(instant),
    }),
    practised: fc.record({ id: fc.uuid(), day, who: hostileText, recordedAt: instant, voidedAt: orNull(instant) }),
    givenBy: hostileText,
  })
  .map(({ happened, given, practised, givenBy, sessions, heights, ...facts }): ArchivedStudent => {
    const event = { ...happened, kind: "injury" as const, rebaselines: "hinge", endDay: null, place: "wrist" as const };
    const changed = { before: "", after: "hinge", who: givenBy, why: givenBy, changedAt: facts.createdAt };
    const dose = { minutes: 10, balls: null, felt: "hard" as const, source: "told" as const, pain: null };
    const asked = { state: "stopped" as const, day: given.startDay, who: givenBy, plan: null };
    return numbered({
      ...facts,
      departedOn: null,
      zone: "Europe/Berlin",
      heights: heights.sort((a, b) => byText(a.day, b.day)),
      consents: [
        {
          id: `c-${facts.id}`,
          kind: "measure",
          givenBy,
          giverIs: "guardian",
          withdrawnBy: null,
          fromDay: given.startDay,
          untilDay: null,
          withdrawnOn: null,
          recordedAt: facts.createdAt,
        },
      ],
      // Of one day, the first entered has the sequence 1.
      sessions: sessions
        .sort((a, b) => byText(a.day, b.day))
        .map((made, at, all) => sessionOf(made, all.slice(0, at).filter((one) => one.day === made.day).length + 1)),
      events: [{ ...event, voidedAt: null, changes: [changed] }],
      assignments: [{ ...given, drillId: "d1", fundamentalId: "hinge", endDay: null, recordedAt: null }],
      practice: [{ ...practised, ...dose, assignmentId: given.id }],
      askings: [{ ...asked, fundamentalId: "hinge", clubGroup: "iron", recordedAt: facts.createdAt }],
      readBacks: [],
      snapshots: [],
    });
  });

const goals = Object.fromEntries(
  ["short-iron", "iron", "hybrid", "wood", "driver"].map((kind) => [kind, { low: 2, high: 20 }]),
);

/** An own fundamental that the archives hold. */
export const OWN_HEEL = {
  id: "own-heel",
  ownName: "Heel",
  unit: "deg",
  view: "face-on",
  checkpoint: "top",
  phase: "in-swing",
  order: 170,
  mirrors: "same",
  derivedFrom: null,
  plausible: { low: -5, high: 60 },
  goals,
  readerSd: 1.5,
  cameraSdUnknown: 1.2,
  sensitivity: { yaw: 0.1, roll: 0.1, offset: 0 },
};

/** Whole archives of up to three students with hostile texts everywhere. */
export const anyArchive: fc.Arbitrary<Archive> = fc
  .record({
    students: fc.uniqueArray(student, { minLength: 1, maxLength: 3, selector: ({ alias }) => alias }),
    text: hostileText,
    seasonStart: day,
    createdAt: instant,
  })
  .map(({ students, text, seasonStart, createdAt }) => ({
    format: ARCHIVE_FORMAT,
    version: ARCHIVE_VERSION,
    holds: "academy",
    rules: {
      zone: "UTC",
      locale: "en",
      seasonStart,
      ownFundamentals: [{ id: "own-heel", definition: JSON.stringify(OWN_HEEL), createdAt }],
      clubGroups: [],
      drills: [{ id: "d1", name: text, fundamentalId: "hinge", how: text, cautions: text }],
      goalBands: [
        {
          id: "g1",
          fundamentalId: "hinge",
          clubGroup: "iron",
          scope: "academy",
          ageFrom: null,
          ageTo: null,
          studentId: null,
          low: 80,
          high: null,
          fromDay: seasonStart,
          reason: text,
          createdAt,
        },
      ],
      noiseModels: [
        {
          pool: "hinge/iron",
          number: 1,
          name: "hinge/iron#1",
          learnedUpTo: "",
          poolSessions: 0,
          fittedAt: createdAt,
          body: NOISE,
        },
      ],
      readerErrors: [],
      noteCodings: [{ phrase: text, coding: "{}", who: text, recordedAt: createdAt }],
    },
    students: students.sort((a, b) => byText(a.alias, b.alias)),
    rereads: [],
  }));
