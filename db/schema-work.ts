import { index, integer, primaryKey, real, sqliteTable, text, uniqueIndex } from "drizzle-orm/sqlite-core";
import { academy, importBatch, session, student } from "./schema";

/** An academy's own fundamentals; the definition is checked on write and kept as JSON. */
export const ownFundamental = sqliteTable(
  "own_fundamental",
  {
    academyId: text("academy_id")
      .notNull()
      .references(() => academy.id),
    id: text("id").notNull(),
    definition: text("definition").notNull(),
    createdAt: text("created_at").notNull(),
  },
  (table) => [primaryKey({ columns: [table.academyId, table.id] })],
);

export const goalBand = sqliteTable("goal_band", {
  id: text("id").primaryKey(),
  academyId: text("academy_id")
    .notNull()
    .references(() => academy.id),
  fundamentalId: text("fundamental_id").notNull(),
  clubGroup: text("club_group").notNull(),
  scope: text("scope", { enum: ["academy", "age-range", "student"] }).notNull(),
  ageFrom: integer("age_from"),
  ageTo: integer("age_to"),
  studentId: text("student_id").references(() => student.id, { onDelete: "cascade" }),
  low: real("low"),
  high: real("high"),
  fromDay: text("from_day").notNull(),
  reason: text("reason").notNull(),
  /** Empty: from before that was kept, or built with the demo. */
  who: text("who").notNull().default(""),
  createdAt: text("created_at").notNull(),
});

export const drill = sqliteTable("drill", {
  id: text("id").primaryKey(),
  academyId: text("academy_id")
    .notNull()
    .references(() => academy.id),
  name: text("name").notNull(),
  fundamentalId: text("fundamental_id").notNull(),
  ...{ how: text("how").notNull(), cautions: text("cautions").notNull() },
  /** How it is usually given; empty or null: not said. */
  ...{ dose: text("dose").notNull().default(""), remeasureDays: integer("remeasure_days") },
  ...{ reps: integer("reps"), minutesADay: integer("minutes_a_day"), daysAWeek: integer("days_a_week") },
  /** First day on which it isn't offered any more; null: it is offered. */
  retiredOn: text("retired_on"),
  /** JSON: how it was described before, oldest first, with who changed it why. Entries are added and never changed. */
  earlier: text("earlier").notNull().default("[]"),
});

export const drillAssignment = sqliteTable("drill_assignment", {
  id: text("id").primaryKey(),
  studentId: text("student_id")
    .notNull()
    .references(() => student.id, { onDelete: "cascade" }),
  drillId: text("drill_id")
    .notNull()
    .references(() => drill.id),
  fundamentalId: text("fundamental_id").notNull(),
  startDay: text("start_day").notNull(),
  endDay: text("end_day"),
  dose: text("dose").notNull(),
  /** Asked for on each day of practice; null: not said. */
  ...{ reps: integer("reps"), minutesADay: integer("minutes_a_day"), daysAWeek: integer("days_a_week") },
  /** When to stop before the end; pain always stops it. */
  stopRule: text("stop_rule").notNull().default(""),
  remeasureOn: text("remeasure_on"),
  who: text("who").notNull().default(""),
  recordedAt: text("recorded_at"),
  /** Why it was stopped; null: it runs, or nobody said. */
  endWhy: text("end_why"),
  /** Null: it stands. Taken back, it was given to nobody, and no chart knows of it. */
  voidedAt: text("voided_at"),
  batchId: text("batch_id").references(() => importBatch.id),
});

export const event = sqliteTable("event", {
  id: text("id").primaryKey(),
  studentId: text("student_id")
    .notNull()
    .references(() => student.id, { onDelete: "cascade" }),
  kind: text("kind", {
    enum: ["growth", "new-club", "break", "injury", "pause", "reader-change", "season-start"],
  }).notNull(),
  day: text("day").notNull(),
  note: text("note").notNull(),
  /** Ids of the fundamentals whose tracks begin anew that day, separated by commas; empty: drawn only. */
  rebaselines: text("rebaselines").notNull().default(""),
  /** Last day of a break or of a pause for an injury; null: no end known, or a day only. */
  endDay: text("end_day"),
  /** Where it hurts, one word of a short list and nothing more; null: not an injury. */
  place: text("place"),
  who: text("who").notNull().default(""),
  recordedAt: text("recorded_at"),
  /** Null: it stands. Taken back, it is drawn nowhere and re-baselines nothing. */
  voidedAt: text("voided_at"),
  batchId: text("batch_id").references(() => importBatch.id),
});

/** Every change of an academy's club groups, in order, with the groups as they were from then on. */
export const clubRegrouping = sqliteTable(
  "club_regrouping",
  {
    academyId: text("academy_id")
      .notNull()
      .references(() => academy.id),
    number: integer("number").notNull(),
    kind: text("kind", { enum: ["arrange", "split", "merge", "rename"] }).notNull(),
    /** Groups that went and that came, ids separated by commas. */
    fromGroups: text("from_groups").notNull(),
    toGroups: text("to_groups").notNull(),
    /** Sessions that changed their group with it. */
    sessions: integer("sessions").notNull(),
    day: text("day").notNull(),
    who: text("who").notNull(),
    why: text("why").notNull(),
    grouping: text("grouping").notNull(),
    recordedAt: text("recorded_at").notNull(),
  },
  (table) => [primaryKey({ columns: [table.academyId, table.number] })],
);

/** What is done about a track's question; the latest row holds, the earlier ones are its history. */
export const asking = sqliteTable(
  "asking",
  {
    id: integer("id").primaryKey({ autoIncrement: true }),
    studentId: text("student_id")
      .notNull()
      .references(() => student.id, { onDelete: "cascade" }),
    fundamentalId: text("fundamental_id").notNull(),
    clubGroup: text("club_group").notNull(),
    state: text("state", { enum: ["asked", "stopped", "planned"] }).notNull(),
    day: text("day").notNull(),
    who: text("who").notNull(),
    /** The plan as it was taken, JSON; null unless planned. */
    plan: text("plan"),
    recordedAt: text("recorded_at").notNull(),
  },
  (table) => [index("asking_track").on(table.studentId, table.fundamentalId, table.clubGroup, table.id)],
);

/** A fitted noise model: numbered, dated, never changed; nobody's data in it. */
export const noiseModel = sqliteTable(
  "noise_model",
  {
    academyId: text("academy_id")
      .notNull()
      .references(() => academy.id),
    pool: text("pool").notNull(),
    number: integer("number").notNull(),
    name: text("name").notNull(),
    /** Date of the latest session that it was learned from. */
    learnedUpTo: text("learned_up_to").notNull(),
    /** Sessions in the pool at the fit; the next fit waits until they have grown by a tenth. */
    poolSessions: integer("pool_sessions").notNull(),
    fittedAt: text("fitted_at").notNull(),
    body: text("body").notNull(),
  },
  (table) => [
    primaryKey({ columns: [table.academyId, table.pool, table.number] }),
    uniqueIndex("noise_model_name").on(table.academyId, table.name),
  ],
);

/** The noise model with which the look after one session is said; written once. */
export const lookNoise = sqliteTable(
  "look_noise",
  {
    studentId: text("student_id")
      .notNull()
      .references(() => student.id, { onDelete: "cascade" }),
    sessionId: text("session_id")
      .notNull()
      .references(() => session.id, { onDelete: "cascade" }),
    fundamentalId: text("fundamental_id").notNull(),
    /** The group in which the look was said; a session that changes its group is looked at anew there. */
    clubGroup: text("club_group").notNull(),
    noiseModelName: text("noise_model_name").notNull(),
  },
  (table) => [
    primaryKey({ columns: [table.sessionId, table.fundamentalId, table.clubGroup] }),
    index("look_noise_student").on(table.studentId),
  ],
);

/** Kept analyses, opaque here; everything in them can be thrown away and computed again. */
export const analysis = sqliteTable(
  "analysis",
  {
    academyId: text("academy_id")
      .notNull()
      .references(() => academy.id),
    studentId: text("student_id")
      .notNull()
      .references(() => student.id, { onDelete: "cascade" }),
    fundamentalId: text("fundamental_id").notNull(),
    clubGroup: text("club_group").notNull(),
    asOf: text("as_of").notNull(),
    policyVersion: text("policy_version").notNull(),
    /** Name of the newest noise model that the analysis used. */
    noiseModel: text("noise_model").notNull(),
    /** The student's revision when it was made. */
    dataRevision: integer("data_revision").notNull(),
    /** Small part for lists. */
    summary: text("summary").notNull(),
    /** The whole. */
    body: text("body").notNull(),
  },
  (table) => [
    primaryKey({ columns: [table.studentId, table.fundamentalId, table.clubGroup, table.asOf, table.policyVersion] }),
    index("analysis_academy").on(table.academyId, table.asOf),
  ],
);

/** The roster's list of proved changes as of a day, opaque here. */
export const rosterList = sqliteTable(
  "roster_list",
  {
    academyId: text("academy_id")
      .notNull()
      .references(() => academy.id),
    asOf: text("as_of").notNull(),
    policyVersion: text("policy_version").notNull(),
    /** Digest of the analyses that it rests on. */
    inputDigest: text("input_digest").notNull(),
    body: text("body").notNull(),
  },
  (table) => [primaryKey({ columns: [table.academyId, table.asOf, table.policyVersion] })],
);

/** What a viewer has pressed "seen" on: the proved changes told until then. */
export const seen = sqliteTable(
  "seen",
  {
    id: integer("id").primaryKey({ autoIncrement: true }),
    academyId: text("academy_id")
      .notNull()
      .references(() => academy.id),
    viewer: text("viewer").notNull(),
    seenAt: text("seen_at").notNull(),
    asOf: text("as_of").notNull(),
    body: text("body").notNull(),
  },
  (table) => [index("seen_viewer").on(table.academyId, table.viewer, table.id)],
);
