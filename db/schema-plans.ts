import { index, integer, primaryKey, real, sqliteTable, text } from "drizzle-orm/sqlite-core";
import { academy, student } from "./schema";
import { drillAssignment } from "./schema-work";

/** What a coach puts in hand against the order of work; the latest row holds, the earlier ones are its history. */
export const priorityChoice = sqliteTable(
  "priority_choice",
  {
    id: integer("id").primaryKey({ autoIncrement: true }),
    studentId: text("student_id")
      .notNull()
      .references(() => student.id, { onDelete: "cascade" }),
    clubGroup: text("club_group").notNull(),
    /** Null: the order of work holds again. */
    fundamentalId: text("fundamental_id"),
    reason: text("reason").notNull(),
    day: text("day").notNull(),
    who: text("who").notNull(),
    recordedAt: text("recorded_at").notNull(),
  },
  (table) => [index("priority_choice_student").on(table.studentId, table.clubGroup, table.id)],
);

/** What was decided at the day on which a drill was to be measured again; rows are never changed. */
export const drillDecision = sqliteTable(
  "drill_decision",
  {
    id: integer("id").primaryKey({ autoIncrement: true }),
    assignmentId: text("assignment_id")
      .notNull()
      .references(() => drillAssignment.id, { onDelete: "cascade" }),
    decision: text("decision", { enum: ["keep", "change-drill", "change-goal", "stop"] }).notNull(),
    why: text("why").notNull(),
    /** The day that it replaces; null: none was set. */
    remeasureWas: text("remeasure_was"),
    day: text("day").notNull(),
    who: text("who").notNull(),
    recordedAt: text("recorded_at").notNull(),
  },
  (table) => [index("drill_decision_assignment").on(table.assignmentId, table.id)],
);

/** What the next film of a student is to show, as it was told to the family. */
export const filmPlan = sqliteTable(
  "film_plan",
  {
    id: text("id").primaryKey(),
    studentId: text("student_id")
      .notNull()
      .references(() => student.id, { onDelete: "cascade" }),
    clubGroup: text("club_group").notNull(),
    /** The day on which it was made, and the one by which the film is promised. */
    madeOn: text("made_on").notNull(),
    dueOn: text("due_on").notNull(),
    /** JSON: the fundamentals with their swings, the views, the care. */
    body: text("body").notNull(),
    who: text("who").notNull(),
    recordedAt: text("recorded_at").notNull(),
    /** When the family was last reminded; null: never. */
    remindedAt: text("reminded_at"),
    /** Null: it stands. */
    voidedAt: text("voided_at"),
  },
  (table) => [index("film_plan_student").on(table.studentId, table.dueOn)],
);

/** What a family was told, every word as it was sent; pressed by the coach, never written by looking at a page. */
export const told = sqliteTable(
  "told",
  {
    id: text("id").primaryKey(),
    studentId: text("student_id")
      .notNull()
      .references(() => student.id, { onDelete: "cascade" }),
    clubGroup: text("club_group").notNull(),
    kind: text("kind", { enum: ["message", "file", "letter"] }).notNull(),
    text: text("text").notNull(),
    /** JSON: the changes that it tells, by fundamental. */
    findings: text("findings").notNull(),
    /** On which and as of which it was told. */
    day: text("day").notNull(),
    who: text("who").notNull(),
    recordedAt: text("recorded_at").notNull(),
    /** Null: it stands. */
    voidedAt: text("voided_at"),
  },
  (table) => [index("told_student").on(table.studentId, table.recordedAt)],
);

/** A stretch in which a student is left without a drill for a fundamental on purpose: marked on its first day, never afterwards. */
export const waiting = sqliteTable(
  "waiting",
  {
    id: text("id").primaryKey(),
    studentId: text("student_id")
      .notNull()
      .references(() => student.id, { onDelete: "cascade" }),
    fundamentalId: text("fundamental_id").notNull(),
    fromDay: text("from_day").notNull(),
    /** The last day; null: it lasts. */
    untilDay: text("until_day"),
    who: text("who").notNull(),
    recordedAt: text("recorded_at").notNull(),
    /** Null: it stands. */
    voidedAt: text("voided_at"),
  },
  (table) => [index("waiting_student").on(table.studentId, table.fromDay)],
);

/** An academy's rule of when a fundamental is owned: numbered, dated, never changed. */
export const owningRule = sqliteTable(
  "owning_rule",
  {
    academyId: text("academy_id")
      .notNull()
      .references(() => academy.id),
    number: integer("number").notNull(),
    /** Looks at sessions of this day and later are judged by it. */
    fromDay: text("from_day").notNull(),
    sessions: integer("sessions").notNull(),
    /** Days from the first to the last of them. */
    spanDays: integer("span_days").notNull(),
    /** Days between the last practice and the last of them. */
    restDays: integer("rest_days").notNull(),
    /** Share of swings inside, 0 to 1, and the lower end of its 80 of 100 interval. */
    share: real("share").notNull(),
    shareLow: real("share_low").notNull(),
    who: text("who").notNull(),
    why: text("why").notNull(),
    recordedAt: text("recorded_at").notNull(),
  },
  (table) => [primaryKey({ columns: [table.academyId, table.number] })],
);

/** A test of two drills by the lot, as it was planned; never changed. */
export const fairTest = sqliteTable("fair_test", {
  id: text("id").primaryKey(),
  academyId: text("academy_id")
    .notNull()
    .references(() => academy.id),
  fundamentalId: text("fundamental_id").notNull(),
  ...{ firstDrillId: text("first_drill_id").notNull(), secondDrillId: text("second_drill_id").notNull() },
  /** The least difference worth finding and the spread of what students gain, in the fundamental's unit. */
  ...{ least: real("least").notNull(), spread: real("spread").notNull() },
  /** How many are to be drawn, at how many looks, and for how many days each is followed. */
  ...{ students: integer("students").notNull(), looks: integer("looks").notNull(), days: integer("days").notNull() },
  /** Of which the order of every coach is made; shown to nobody before the end. */
  seed: text("seed").notNull(),
  day: text("day").notNull(),
  who: text("who").notNull(),
  recordedAt: text("recorded_at").notNull(),
});

/** Which drill a student drew; never changed, also where another one was given. */
export const fairAllocation = sqliteTable(
  "fair_allocation",
  {
    id: text("id").primaryKey(),
    testId: text("test_id")
      .notNull()
      .references(() => fairTest.id),
    studentId: text("student_id")
      .notNull()
      .references(() => student.id, { onDelete: "cascade" }),
    clubGroup: text("club_group").notNull(),
    /** Whose order it is taken from, and its place there, from 0. */
    ...{ coachId: text("coach_id").notNull(), place: integer("place").notNull() },
    /** 0: the first drill; 1: the second. */
    arm: integer("arm").notNull(),
    day: text("day").notNull(),
    who: text("who").notNull(),
    recordedAt: text("recorded_at").notNull(),
  },
  (table) => [index("fair_allocation_test").on(table.testId, table.coachId, table.place)],
);

/** A planned look at a test, or its end; never changed. */
export const fairStep = sqliteTable(
  "fair_step",
  {
    testId: text("test_id")
      .notNull()
      .references(() => fairTest.id),
    number: integer("number").notNull(),
    kind: text("kind", { enum: ["look", "end"] }).notNull(),
    /** JSON: what was found; null: the end. */
    figures: text("figures"),
    why: text("why").notNull(),
    day: text("day").notNull(),
    who: text("who").notNull(),
    recordedAt: text("recorded_at").notNull(),
  },
  (table) => [primaryKey({ columns: [table.testId, table.number] })],
);

/** What a look found of one draw, with the look at which it was first in. */
export const fairValue = sqliteTable("fair_value", {
  allocationId: text("allocation_id")
    .primaryKey()
    .references(() => fairAllocation.id, { onDelete: "cascade" }),
  look: integer("look").notNull(),
  value: real("value").notNull(),
});
