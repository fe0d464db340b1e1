import { z } from "zod";
import { anyText, clubGroup, count, day, fundamentalId, id, instant, number, text } from "./archive-fields";
import { UNITS, VIEWS } from "./fundamental";
import { SIGN_RULES } from "./handedness";
import { CIRCUMSTANCES, PLACEMENTS, SQUARENESS } from "./session";

const correction = z.strictObject({
  /** Place among all corrections of this student, from 1, in the order in which they were made. */
  place: count,
  kind: z.enum(["change", "void"]),
  value: number.nullable(),
  typed: text,
  who: text,
  why: text,
  correctedAt: instant,
});

const reading = z.strictObject({
  fundamentalId,
  reader: text,
  /** 0: first reading by this reader; 1, 2 …: read again. */
  reread: count,
  /** Handedness-neutral, in the unit; null: not measurable. As entered: corrections stand beside it. */
  value: number.nullable(),
  typed: text,
  unit: z.enum(UNITS),
  signRule: z.enum(SIGN_RULES),
  enteredAt: instant,
  corrections: z.array(correction),
});

const swing = z.strictObject({ number: count, note: text.nullable(), readings: z.array(reading) });

const capture = z.strictObject({
  view: z.enum(VIEWS),
  placement: z.enum(PLACEMENTS),
  placementLabel: text.nullable(),
  squareness: z.enum(SQUARENESS),
  offBy: number.nullable(),
  pointingStickLean: number.nullable(),
  acrossStickSlope: number.nullable(),
  plumbLean: number.nullable(),
  lensHeightCm: number.nullable(),
  handsHeightCm: number.nullable(),
  distanceCm: number.nullable(),
  besideHandsCm: number.nullable(),
  framesPerSecond: number.nullable(),
  shutterPerSecond: number.nullable(),
  placedBy: text.nullable(),
  setAsideReason: text.nullable(),
  filmReference: text.nullable(),
});

/** One filming with everything that was read of it. */
export const archivedSession = z.strictObject({
  id,
  day,
  sequence: count,
  /** The group in force when the archive was made. */
  clubGroup,
  /** The group that was said when the session was entered. */
  saidClubGroup: clubGroup,
  club: text.nullable(),
  reader: text,
  circumstance: z.enum(CIRCUMSTANCES),
  aid: text.nullable(),
  stanceWidthCm: number.nullable(),
  daysSincePractice: z.number().int().nullable(),
  marks: text,
  note: text.nullable(),
  solid: count.nullable(),
  balls: count.nullable(),
  setAsideReason: text.nullable(),
  createdAt: instant,
  /** Sessions of one group were filmed on one occasion. */
  groupId: id.nullable(),
  captures: z.array(capture),
  /** Camera sds that were stated for one fundamental. */
  statedCaptureSds: z.array(z.strictObject({ fundamentalId, sd: number.min(0) })),
  swings: z.array(swing),
  /** The noise model with which each look after this session was said. */
  looks: z.array(z.strictObject({ fundamentalId, clubGroup, noiseModelName: id })),
});

/**
 * The longest snapshot, in characters: one of fourteen sessions has seven thousand, and a thousand sessions stay below it.
 * More is no snapshot.
 */
export const LONGEST_SNAPSHOT = 1_000_000;

/** What was said of one track, kept whole; it can be thrown away and computed again. */
export const archivedSnapshot = z.strictObject({
  fundamentalId,
  clubGroup,
  asOf: day,
  policyVersion: text,
  noiseModel: text,
  /** Whether the track stands on the roster's list of proved changes now, and stood on it at each look. */
  listed: z.boolean(),
  listedLooks: z.array(z.boolean()),
  /** JSON: the judged track and its verdict with all its looks. */
  body: anyText.max(LONGEST_SNAPSHOT),
});

export type ArchivedSession = Readonly<z.infer<typeof archivedSession>>;
export type ArchivedCapture = ArchivedSession["captures"][number];
export type ArchivedSwing = ArchivedSession["swings"][number];
export type ArchivedReading = ArchivedSwing["readings"][number];
export type ArchivedSnapshot = Readonly<z.infer<typeof archivedSnapshot>>;
