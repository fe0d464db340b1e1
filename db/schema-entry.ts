import { index, integer, primaryKey, sqliteTable, text, uniqueIndex } from "drizzle-orm/sqlite-core";
import { academy, importBatch, reading, session, student, swing } from "./schema";
import { drillAssignment, event } from "./schema-work";

/** What was typed or uploaded and isn't saved yet. */
export const draft = sqliteTable("draft", {
  id: text("id").primaryKey(),
  academyId: text("academy_id")
    .notNull()
    .references(() => academy.id),
  /** Who typed it; null: from before there were accounts. */
  userId: text("user_id"),
  kind: text("kind").notNull(),
  /** Whose record it is about, so that it goes with the student; null: nobody's, or several students'. */
  studentId: text("student_id").references(() => student.id, { onDelete: "cascade" }),
  body: text("body").notNull(),
  /** Grows by one with each time it is kept; who keeps an older one is told so. */
  version: integer("version").notNull().default(1),
  updatedAt: text("updated_at").notNull(),
});

/** The answer to a form that was saved, so that the same form sent twice is saved once. */
export const formReceipt = sqliteTable(
  "form_receipt",
  {
    academyId: text("academy_id")
      .notNull()
      .references(() => academy.id),
    /** Random, made with the form. */
    key: text("key").notNull(),
    kind: text("kind").notNull(),
    /** JSON. */
    outcome: text("outcome").notNull(),
    savedAt: text("saved_at").notNull(),
  },
  (table) => [primaryKey({ columns: [table.academyId, table.key] })],
);

/** What a viewer prefers, by name. */
export const preference = sqliteTable(
  "preference",
  {
    academyId: text("academy_id")
      .notNull()
      .references(() => academy.id),
    viewer: text("viewer").notNull(),
    name: text("name").notNull(),
    value: text("value").notNull(),
  },
  (table) => [primaryKey({ columns: [table.academyId, table.viewer, table.name] })],
);

/** How an academy codes a phrase about a strike; the latest row of a phrase holds, the earlier ones are its history. */
export const noteCoding = sqliteTable(
  "note_coding",
  {
    id: integer("id").primaryKey({ autoIncrement: true }),
    academyId: text("academy_id")
      .notNull()
      .references(() => academy.id),
    /** In the form in which phrases are compared. */
    phrase: text("phrase").notNull(),
    /** JSON. */
    coding: text("coding").notNull(),
    who: text("who").notNull(),
    recordedAt: text("recorded_at").notNull(),
  },
  (table) => [index("note_coding_phrase").on(table.academyId, table.phrase, table.id)],
);

/** How files of one source are read: what was answered for the last one of the same columns. */
export const importSource = sqliteTable(
  "import_source",
  {
    academyId: text("academy_id")
      .notNull()
      .references(() => academy.id),
    /** Digest of the column heads. */
    fingerprint: text("fingerprint").notNull(),
    fileName: text("file_name").notNull(),
    /** JSON: column mapping, and what was said of signs and dates. */
    answers: text("answers").notNull(),
    updatedAt: text("updated_at").notNull(),
  },
  (table) => [primaryKey({ columns: [table.academyId, table.fingerprint] })],
);

/** A key by which another program may import; only its hash is kept. */
export const accessToken = sqliteTable(
  "access_token",
  {
    id: text("id").primaryKey(),
    academyId: text("academy_id")
      .notNull()
      .references(() => academy.id),
    name: text("name").notNull(),
    tokenHash: text("token_hash").notNull(),
    who: text("who").notNull(),
    /** Whose key; null: from before there were accounts, and good for nothing until somebody makes a new one. */
    userId: text("user_id"),
    createdAt: text("created_at").notNull(),
    lastUsedAt: text("last_used_at"),
    revokedAt: text("revoked_at"),
  },
  (table) => [uniqueIndex("access_token_hash").on(table.tokenHash)],
);

/** A change of the record above single readings, with all that its undoing needs. Rows are never removed. */
export const recordChange = sqliteTable(
  "record_change",
  {
    id: integer("id").primaryKey({ autoIncrement: true }),
    academyId: text("academy_id")
      .notNull()
      .references(() => academy.id),
    kind: text("kind", { enum: ["session-facts", "move-session", "split-session", "merge-students"] }).notNull(),
    /** Whose record it was. */
    studentId: text("student_id")
      .notNull()
      .references(() => student.id, { onDelete: "cascade" }),
    /** Whose it became; null: the same student's. */
    otherStudentId: text("other_student_id").references(() => student.id, { onDelete: "cascade" }),
    /** Null: the change is about a student. */
    sessionId: text("session_id").references(() => session.id, { onDelete: "cascade" }),
    /** JSON: how it was, and how it became. */
    before: text("before").notNull(),
    after: text("after").notNull(),
    who: text("who").notNull(),
    why: text("why").notNull(),
    changedAt: text("changed_at").notNull(),
    undoneAt: text("undone_at"),
    undoneBy: text("undone_by"),
  },
  (table) => [
    index("record_change_student").on(table.studentId, table.id),
    index("record_change_other").on(table.otherStudentId, table.id),
  ],
);

/** Every change of which tracks begin anew at an event. */
export const rebaselineChange = sqliteTable(
  "rebaseline_change",
  {
    id: integer("id").primaryKey({ autoIncrement: true }),
    eventId: text("event_id")
      .notNull()
      .references(() => event.id, { onDelete: "cascade" }),
    /** Ids of fundamentals, separated by commas. */
    before: text("before").notNull(),
    after: text("after").notNull(),
    who: text("who").notNull(),
    why: text("why").notNull(),
    changedAt: text("changed_at").notNull(),
  },
  (table) => [index("rebaseline_change_event").on(table.eventId, table.id)],
);

/** Practice of one day. */
export const practice = sqliteTable(
  "practice",
  {
    id: text("id").primaryKey(),
    studentId: text("student_id")
      .notNull()
      .references(() => student.id, { onDelete: "cascade" }),
    day: text("day").notNull(),
    /** The drill as it was given; null: practice without one. */
    assignmentId: text("assignment_id").references(() => drillAssignment.id, { onDelete: "cascade" }),
    /** At least one of the two is known. */
    minutes: integer("minutes"),
    balls: integer("balls"),
    felt: text("felt", { enum: ["easy", "hard"] }),
    /** Who says so: seen by the coach, or told by the family. */
    source: text("source", { enum: ["coach", "told", "family"] }).notNull(),
    /** Where it hurts as the family said it on the day; only coach and family see it. */
    pain: text("pain"),
    who: text("who").notNull(),
    recordedAt: text("recorded_at").notNull(),
    /** Null: it stands. */
    voidedAt: text("voided_at"),
    batchId: text("batch_id").references(() => importBatch.id),
  },
  (table) => [index("practice_student").on(table.studentId, table.day)],
);

/** Earlier films of one student read for a fundamental that was not measured then, in random order, their days hidden. */
export const readBack = sqliteTable(
  "read_back",
  {
    id: text("id").primaryKey(),
    studentId: text("student_id")
      .notNull()
      .references(() => student.id, { onDelete: "cascade" }),
    fundamentalId: text("fundamental_id").notNull(),
    reader: text("reader").notNull(),
    who: text("who").notNull(),
    drawnAt: text("drawn_at").notNull(),
    /** Null: open, and nothing of it is in the record. */
    finishedAt: text("finished_at"),
    droppedAt: text("dropped_at"),
  },
  (table) => [index("read_back_student").on(table.studentId, table.drawnAt)],
);

/** One swing of an earlier film, in the order of reading. */
export const readBackItem = sqliteTable(
  "read_back_item",
  {
    readBackId: text("read_back_id")
      .notNull()
      .references(() => readBack.id, { onDelete: "cascade" }),
    place: integer("place").notNull(),
    swingId: integer("swing_id")
      .notNull()
      .references(() => swing.id, { onDelete: "cascade" }),
    /** As the coach typed it; it names the film and nothing else. */
    filmReference: text("film_reference").notNull(),
    /** Null: not read yet. Kept here until the whole is finished, so that no verdict sees half of it. */
    typed: text("typed"),
    /** Made when the whole is finished. */
    readingId: integer("reading_id").references(() => reading.id, { onDelete: "cascade" }),
  },
  (table) => [primaryKey({ columns: [table.readBackId, table.place] })],
);
