import { z } from "zod";
import { anyText, clubGroup, count, day, fundamentalId, id, instant, joined, number, text } from "./archive-fields";
import {
  archivedAssignment,
  archivedDrill,
  archivedFilmPlan,
  archivedOwningRule,
  archivedPriority,
} from "./archive-plans";
import { archivedSession, archivedSnapshot } from "./archive-session";
import { ASKING_STATES } from "./asking";
import { archivedCarried } from "./carried-look";
import { CONSENT_KINDS, GIVERS } from "./consent";
import { HANDS } from "./handedness";
import { LANGUAGES } from "./language";
import { REREAD_LEVELS } from "./reread";
import { EVENT_KINDS, PAIN_PLACES } from "./student";

/** The name by which an archive is known, and the version of its structure. A new column or meaning is a new version. */
export const ARCHIVE_FORMAT = "proofband-archive";
export const ARCHIVE_VERSION = 1;

const consent = z.strictObject({
  id,
  kind: z.enum(CONSENT_KINDS),
  givenBy: text,
  fromDay: day,
  untilDay: day.nullable(),
  withdrawnOn: day.nullable(),
  // Files from before these were kept have neither.
  giverIs: z.enum(GIVERS).default("guardian"),
  withdrawnBy: text.nullable().default(null),
  recordedAt: instant,
});

const event = z.strictObject({
  id,
  kind: z.enum(EVENT_KINDS),
  day,
  note: text,
  /** Ids of the fundamentals that begin anew that day. */
  rebaselines: joined,
  endDay: day.nullable(),
  /** Where it hurts, one word. */
  place: z.enum(PAIN_PLACES).nullable(),
  who: text,
  recordedAt: instant.nullable(),
  voidedAt: instant.nullable(),
  changes: z.array(z.strictObject({ before: joined, after: joined, who: text, why: text, changedAt: instant })),
});

const practice = z.strictObject({
  id,
  day,
  assignmentId: id.nullable(),
  minutes: count.nullable(),
  balls: count.nullable(),
  felt: z.enum(["easy", "hard"]).nullable(),
  source: z.enum(["coach", "told", "family"]),
  pain: text.nullable().default(null),
  who: text,
  recordedAt: instant,
  voidedAt: instant.nullable(),
});

const asking = z.strictObject({
  fundamentalId,
  clubGroup,
  state: z.enum(ASKING_STATES),
  day,
  who: text,
  /** JSON: the plan as it was taken; null unless planned. */
  plan: anyText.nullable(),
  recordedAt: instant,
});

/** Earlier films read for a fundamental that was not measured then. Only finished ones are in an archive. */
const readBack = z.strictObject({
  id,
  fundamentalId,
  reader: text,
  who: text,
  drawnAt: instant,
  finishedAt: instant.nullable(),
  droppedAt: instant.nullable(),
  items: z.array(
    z.strictObject({
      place: count,
      sessionId: id,
      swing: count,
      filmReference: text,
      typed: text.nullable(),
      /** Whose reading it became, and which of that reader's; null: none. */
      reading: z.strictObject({ reader: text, reread: count }).nullable(),
    }),
  ),
});

const student = z.strictObject({
  id,
  alias: text.min(1).max(200),
  birthYear: z.number().int().min(1800).max(9999).nullable(),
  hand: z.enum(HANDS),
  zone: text,
  clubs: text,
  // Files from before a family could read in another language have none.
  language: z.enum(LANGUAGES).default("en"),
  createdAt: instant,
  departedOn: day.nullable().default(null),
  heights: z.array(z.strictObject({ day, cm: number })),
  consents: z.array(consent),
  sessions: z.array(archivedSession),
  events: z.array(event),
  assignments: z.array(archivedAssignment),
  practice: z.array(practice),
  askings: z.array(asking),
  priorities: z.array(archivedPriority).default([]),
  filmPlans: z.array(archivedFilmPlan).default([]),
  readBacks: z.array(readBack),
  snapshots: z.array(archivedSnapshot),
  // Files from before these were kept have none.
  carried: z.array(archivedCarried).default([]),
});

const goalBand = z.strictObject({
  id,
  fundamentalId,
  clubGroup,
  scope: z.enum(["academy", "age-range", "student"]),
  ageFrom: z.number().int().nullable(),
  ageTo: z.number().int().nullable(),
  studentId: id.nullable(),
  low: number.nullable(),
  high: number.nullable(),
  fromDay: day,
  reason: text,
  who: text.default(""),
  createdAt: instant,
});

/** Swings drawn to be read again; only finished draws, and of them only the students of the archive. */
const reread = z.strictObject({
  id,
  reader: text,
  level: z.enum(REREAD_LEVELS),
  sameAs: id.nullable(),
  who: text,
  day,
  drawnAt: instant,
  finishedOn: day.nullable(),
  finishedAt: instant.nullable(),
  items: z.array(
    z.strictObject({
      place: count,
      studentId: id,
      sessionId: id,
      swing: count,
      fundamentalId,
      filmReference: text,
      reading: z.strictObject({ reader: text, reread: count }).nullable(),
    }),
  ),
});

/** What is the academy's, as far as the students of the archive need it. Nobody's data but theirs. */
const rules = z.strictObject({
  zone: text,
  locale: text,
  seasonStart: day,
  ownFundamentals: z.array(z.strictObject({ id: fundamentalId, definition: anyText, createdAt: instant })),
  clubGroups: z.array(
    z.strictObject({
      number: count,
      kind: z.enum(["arrange", "split", "merge", "rename"]),
      fromGroups: joined,
      toGroups: joined,
      sessions: count,
      day,
      who: text,
      why: text,
      /** JSON: every group from then on. */
      grouping: anyText,
      recordedAt: instant,
    }),
  ),
  owningRules: z.array(archivedOwningRule).default([]),
  drills: z.array(archivedDrill),
  goalBands: z.array(goalBand),
  noiseModels: z.array(
    z.strictObject({
      pool: text,
      number: count,
      name: id,
      learnedUpTo: text,
      poolSessions: count,
      fittedAt: instant,
      /** JSON: the model. */
      body: anyText,
    }),
  ),
  readerErrors: z.array(
    z.strictObject({
      fundamentalId,
      number: count,
      fromDay: day,
      readerSd: number.positive(),
      offsetSd: number.min(0).nullable(),
      pairs: count,
      shared: count,
      version: text,
      fittedAt: instant,
    }),
  ),
  noteCodings: z.array(z.strictObject({ phrase: text, coding: anyText, who: text, recordedAt: instant })),
});

/** Everything of one student or of a whole academy, in one structure. Every list has one order, every object one order of fields. */
export const archiveSchema = z.strictObject({
  format: z.literal(ARCHIVE_FORMAT),
  version: z.literal(ARCHIVE_VERSION),
  holds: z.enum(["student", "academy"]),
  /** The academy as it calls itself; empty: a file from before that was told. */
  saidBy: text.max(200).default(""),
  rules,
  students: z.array(student),
  rereads: z.array(reread),
});

export type Archive = Readonly<z.infer<typeof archiveSchema>>;
export type ArchivedStudent = Archive["students"][number];
export type ArchivedRules = Archive["rules"];
export type ArchivedReread = Archive["rereads"][number];

/** The one text of an archive: the same content is the same text, byte by byte. */
export function archiveText(archive: Archive): string {
  return `${JSON.stringify(archiveSchema.parse(archive), null, 1)}\n`;
}
