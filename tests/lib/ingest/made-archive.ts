import fc from "fast-check";
import { ARCHIVE_FORMAT, ARCHIVE_VERSION, type Archive, type ArchivedStudent } from "@/lib/domain/archive";
import { LANGUAGES } from "@/lib/domain/language";
import { startNoiseModel } from "@/lib/stats/start-noise-model";
import { hostileText } from "./hostile-texts";
import { day, instant, orNull, session, sessionOf, value } from "./made-sessions";

const NOISE = JSON.stringify(startNoiseModel("start"));

const name = fc.tuple(fc.uuid(), hostileText).map(([id, text]) => `${id} ${text}`.trim());

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
    language: fc.constantFrom(...LANGUAGES),
    createdAt: instant,
    heights: fc.uniqueArray(fc.record({ day, cm: value }), { maxLength: 2, selector: (height) => height.day }),
    sessions: fc.array(session, { maxLength: 4 }),
    happened: fc.record({ id: fc.uuid(), day, note: hostileText, who: hostileText, recordedAt: orNull(instant) }),
    given: fc.record({
      id: fc.uuid(),
      startDay: day,
      dose: hostileText,
      reps: orNull(fc.integer({ min: 1, max: 500 })),
      minutesADay: orNull(fc.integer({ min: 1, max: 300 })),
      daysAWeek: orNull(fc.integer({ min: 1, max: 7 })),
      stopRule: hostileText,
      remeasureOn: orNull(day),
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
    const decided = { who: givenBy, recordedAt: facts.createdAt };
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
      assignments: [
        {
          ...given,
          ...{ drillId: "d1", fundamentalId: "hinge", endDay: null, recordedAt: null },
          decisions: [
            { decision: "keep", why: givenBy, remeasureWas: given.remeasureOn, day: given.startDay, ...decided },
            { decision: "stop", why: givenBy, remeasureWas: null, day: given.startDay, ...decided },
          ],
        },
      ],
      practice: [{ ...practised, ...dose, assignmentId: given.id }],
      askings: [{ ...asked, fundamentalId: "hinge", clubGroup: "iron", recordedAt: facts.createdAt }],
      priorities: [
        { clubGroup: "iron", fundamentalId: "hinge", reason: givenBy, day: given.startDay, ...decided },
        { clubGroup: "iron", fundamentalId: null, reason: "", day: given.startDay, ...decided },
      ],
      filmPlans: [
        {
          ...{ id: `f-${facts.id}`, clubGroup: "iron", madeOn: given.startDay, dueOn: given.startDay, body: "{}" },
          ...{ ...decided, remindedAt: null, voidedAt: happened.recordedAt },
        },
      ],
      readBacks: [],
      snapshots: [],
      carried: [],
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
    saidBy: "Far Range",
    rules: {
      zone: "UTC",
      locale: "en",
      seasonStart,
      ownFundamentals: [{ id: "own-heel", definition: JSON.stringify(OWN_HEEL), createdAt }],
      clubGroups: [],
      owningRules: [
        {
          ...{ number: 1, fromDay: seasonStart, sessions: 4, spanDays: 28, restDays: 7, share: 0.8, shareLow: 0.6 },
          ...{ who: text, why: text, recordedAt: createdAt },
        },
      ],
      drills: [
        {
          ...{ id: "d1", name: text, fundamentalId: "hinge", how: text, cautions: text },
          ...{
            dose: text,
            reps: 20,
            minutesADay: null,
            daysAWeek: null,
            retiredOn: null,
            earlier: "[]",
            remeasureDays: 14,
          },
        },
      ],
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
          who: text,
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
