import { sql } from "drizzle-orm";
import {
  type AnySQLiteColumn,
  index,
  integer,
  primaryKey,
  real,
  sqliteTable,
  text,
  uniqueIndex,
} from "drizzle-orm/sqlite-core";
import type { ClubGroup } from "@/lib/domain/club-group";

export const academy = sqliteTable("academy", {
  id: text("id").primaryKey(),
  name: text("name").notNull(),
  ownerName: text("owner_name").notNull(),
  zone: text("zone").notNull(),
  locale: text("locale").notNull(),
  kind: text("kind", { enum: ["demo", "own"] }).notNull(),
  /** The demo's fixed today; null: the real one. */
  fixedToday: text("fixed_today"),
  seasonStart: text("season_start").notNull(),
  createdAt: text("created_at").notNull(),
  /** Months for which the record of a student who has left, or whom nobody has filmed, is kept. */
  keepMonths: integer("keep_months").notNull().default(24),
  /** Days for which a family's link opens. */
  linkDays: integer("link_days").notNull().default(180),
  /** Age from which a student's own consent is asked for; local rules come first. */
  ownConsentAge: integer("own_consent_age").notNull().default(16),
  /** The latest time that the machine's clock has shown: after a great leap nothing is erased until somebody says so. */
  clockSeenAt: text("clock_seen_at"),
});

export const student = sqliteTable(
  "student",
  {
    id: text("id").primaryKey(),
    academyId: text("academy_id")
      .notNull()
      .references(() => academy.id),
    alias: text("alias").notNull(),
    birthYear: integer("birth_year"),
    hand: text("hand", { enum: ["right", "left"] }).notNull(),
    zone: text("zone").notNull(),
    clubs: text("clubs").notNull(),
    /** In which the family reads; a coach’s pages are in the academy’s. */
    language: text("language").$type<"en" | "de">().notNull().default("en"),
    /** Grows by one with every change of this student's data; names the data that an analysis rests on. */
    revision: integer("revision").notNull().default(0),
    createdAt: text("created_at").notNull(),
    /** The import that added the student; null: added by hand. */
    batchId: text("batch_id").references((): AnySQLiteColumn => importBatch.id),
    /** The student whom this one turned out to be; such a student is listed nowhere and has no sessions. */
    mergedInto: text("merged_into").references((): AnySQLiteColumn => student.id),
    /** The day on which the student left the academy; null: is here. */
    departedOn: text("departed_on"),
  },
  // Two coaches may each have a student of the same alias: that there is another one is nothing for them to learn.
  (table) => [index("student_alias").on(table.academyId, table.alias)],
);

export const height = sqliteTable(
  "height",
  {
    studentId: text("student_id")
      .notNull()
      .references(() => student.id, { onDelete: "cascade" }),
    day: text("day").notNull(),
    cm: real("cm").notNull(),
  },
  (table) => [primaryKey({ columns: [table.studentId, table.day] })],
);

export const importBatch = sqliteTable(
  "import_batch",
  {
    id: text("id").primaryKey(),
    academyId: text("academy_id")
      .notNull()
      .references(() => academy.id),
    fileName: text("file_name").notNull(),
    contentHash: text("content_hash").notNull(),
    form: text("form", { enum: ["long", "wide"] }).notNull(),
    rows: integer("rows").notNull(),
    readings: integer("readings").notNull(),
    answers: text("answers").notNull(),
    createdAt: text("created_at").notNull(),
    /** By which door it came. */
    door: text("door", { enum: ["page", "command", "http", "archive"] })
      .notNull()
      .default("page"),
    /** Whose import it was; null: from before there were accounts, or by a command. */
    userId: text("user_id"),
    /** Null: its rows are on file. Taken back, the row stays as its history. */
    undoneAt: text("undone_at"),
    undoneBy: text("undone_by"),
  },
  (table) => [uniqueIndex("import_batch_content").on(table.academyId, table.contentHash).where(sql`undone_at IS NULL`)],
);

export const session = sqliteTable(
  "session",
  {
    id: text("id").primaryKey(),
    studentId: text("student_id")
      .notNull()
      .references(() => student.id, { onDelete: "cascade" }),
    day: text("day").notNull(),
    sequence: integer("sequence").notNull(),
    /** The group in force: it follows from what was said and the academy's groups, and is written anew with them. */
    clubGroup: text("club_group").$type<ClubGroup>().notNull(),
    /** The group that was said when the session was entered; it never changes. */
    saidClubGroup: text("said_club_group").$type<ClubGroup>().notNull(),
    club: text("club"),
    reader: text("reader").notNull(),
    circumstance: text("circumstance", { enum: ["unaided", "aid-in-view", "in-lesson"] }).notNull(),
    aid: text("aid"),
    stanceWidthCm: real("stance_width_cm"),
    daysSincePractice: integer("days_since_practice"),
    /** Short words, separated by commas. */
    marks: text("marks").notNull().default(""),
    note: text("note"),
    solid: integer("solid"),
    balls: integer("balls"),
    setAsideReason: text("set_aside_reason"),
    batchId: text("batch_id").references(() => importBatch.id),
    createdAt: text("created_at").notNull(),
    /** Sessions of one group were filmed on one occasion with one check of the phone; null: filmed alone. */
    groupId: text("group_id"),
  },
  (table) => [uniqueIndex("session_day").on(table.studentId, table.saidClubGroup, table.day, table.sequence)],
);

export const capture = sqliteTable(
  "capture",
  {
    sessionId: text("session_id")
      .notNull()
      .references(() => session.id, { onDelete: "cascade" }),
    view: text("view", { enum: ["face-on", "down-the-line"] }).notNull(),
    placement: text("placement", { enum: ["same", "anew", "unknown"] }).notNull(),
    placementLabel: text("placement_label"),
    squareness: text("squareness", { enum: ["square", "off", "unknown"] }).notNull(),
    offBy: real("off_by"),
    pointingStickLean: real("pointing_stick_lean"),
    acrossStickSlope: real("across_stick_slope"),
    plumbLean: real("plumb_lean"),
    lensHeightCm: real("lens_height_cm"),
    handsHeightCm: real("hands_height_cm"),
    distanceCm: real("distance_cm"),
    besideHandsCm: real("beside_hands_cm"),
    framesPerSecond: real("frames_per_second"),
    shutterPerSecond: real("shutter_per_second"),
    placedBy: text("placed_by"),
    setAsideReason: text("set_aside_reason"),
    filmReference: text("film_reference"),
    batchId: text("batch_id").references(() => importBatch.id),
  },
  (table) => [primaryKey({ columns: [table.sessionId, table.view] })],
);

/** A camera sd stated for one fundamental of one session; it overrides what the capture implies. */
export const statedCaptureSd = sqliteTable(
  "stated_capture_sd",
  {
    sessionId: text("session_id")
      .notNull()
      .references(() => session.id, { onDelete: "cascade" }),
    fundamentalId: text("fundamental_id").notNull(),
    sd: real("sd").notNull(),
    batchId: text("batch_id").references(() => importBatch.id),
  },
  (table) => [primaryKey({ columns: [table.sessionId, table.fundamentalId] })],
);

export const swing = sqliteTable(
  "swing",
  {
    id: integer("id").primaryKey({ autoIncrement: true }),
    sessionId: text("session_id")
      .notNull()
      .references(() => session.id, { onDelete: "cascade" }),
    number: integer("number").notNull(),
    note: text("note"),
    batchId: text("batch_id").references(() => importBatch.id),
  },
  (table) => [uniqueIndex("swing_number").on(table.sessionId, table.number)],
);

export const reading = sqliteTable(
  "reading",
  {
    id: integer("id").primaryKey({ autoIncrement: true }),
    studentId: text("student_id")
      .notNull()
      .references(() => student.id, { onDelete: "cascade" }),
    fundamentalId: text("fundamental_id").notNull(),
    sessionId: text("session_id")
      .notNull()
      .references(() => session.id, { onDelete: "cascade" }),
    swingId: integer("swing_id")
      .notNull()
      .references(() => swing.id, { onDelete: "cascade" }),
    reader: text("reader").notNull(),
    /** 0: first reading by this reader; 1, 2 …: read again. */
    reread: integer("reread").notNull(),
    /** Handedness-neutral; null: not measurable. */
    value: real("value"),
    typed: text("typed").notNull(),
    unit: text("unit").notNull(),
    signRule: text("sign_rule", { enum: ["neutral", "picture"] }).notNull(),
    enteredAt: text("entered_at").notNull(),
    batchId: text("batch_id").references(() => importBatch.id),
  },
  (table) => [
    uniqueIndex("reading_once").on(table.swingId, table.fundamentalId, table.reader, table.reread),
    // Tracks are listed and looks are found from this index alone.
    index("reading_track").on(
      table.studentId,
      table.fundamentalId,
      table.sessionId,
      table.reread,
      table.reader,
      table.swingId,
      table.value,
    ),
  ],
);

/** A correction is a new row; the reading stays as entered. The latest is in force. */
export const correction = sqliteTable(
  "correction",
  {
    id: integer("id").primaryKey({ autoIncrement: true }),
    readingId: integer("reading_id")
      .notNull()
      .references(() => reading.id, { onDelete: "cascade" }),
    /** void: the reading counts no more, neither as a value nor as not measurable; a later change brings it back. */
    kind: text("kind", { enum: ["change", "void"] })
      .notNull()
      .default("change"),
    value: real("value"),
    typed: text("typed").notNull(),
    who: text("who").notNull(),
    why: text("why").notNull(),
    correctedAt: text("corrected_at").notNull(),
  },
  (table) => [index("correction_reading").on(table.readingId, table.id)],
);
