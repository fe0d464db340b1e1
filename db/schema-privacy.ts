import { index, integer, primaryKey, sqliteTable, text, uniqueIndex } from "drizzle-orm/sqlite-core";
import { academy, importBatch, session, student } from "./schema";

export const consent = sqliteTable("consent", {
  id: text("id").primaryKey(),
  studentId: text("student_id")
    .notNull()
    .references(() => student.id, { onDelete: "cascade" }),
  kind: text("kind", { enum: ["measure", "share"] }).notNull(),
  givenBy: text("given_by").notNull(),
  /** Whose word it is; a guardian's holds until the student may speak for themselves. */
  giverIs: text("giver_is", { enum: ["guardian", "student"] })
    .notNull()
    .default("guardian"),
  fromDay: text("from_day").notNull(),
  untilDay: text("until_day"),
  withdrawnOn: text("withdrawn_on"),
  withdrawnBy: text("withdrawn_by"),
  recordedAt: text("recorded_at").notNull(),
  batchId: text("batch_id").references(() => importBatch.id),
});

/** A page of one student for the family, opened by a secret of which only the hash is kept. */
export const familyLink = sqliteTable(
  "family_link",
  {
    /** Stands in the address of the page, and opens nothing. */
    id: text("id").primaryKey(),
    studentId: text("student_id")
      .notNull()
      .references(() => student.id, { onDelete: "cascade" }),
    tokenHash: text("token_hash").notNull(),
    /** For whom: "mother's phone". */
    label: text("label").notNull(),
    who: text("who").notNull(),
    madeAt: text("made_at").notNull(),
    expiresAt: text("expires_at").notNull(),
    /** Null: it ends when it was first to end. */
    renewedAt: text("renewed_at"),
    renewedBy: text("renewed_by"),
    revokedAt: text("revoked_at"),
    revokedBy: text("revoked_by"),
  },
  (table) => [
    uniqueIndex("family_link_hash").on(table.tokenHash),
    index("family_link_student").on(table.studentId, table.madeAt),
  ],
);

export const familyOpening = sqliteTable(
  "family_opening",
  {
    id: integer("id").primaryKey({ autoIncrement: true }),
    linkId: text("link_id")
      .notNull()
      .references(() => familyLink.id, { onDelete: "cascade" }),
    openedAt: text("opened_at").notNull(),
  },
  (table) => [index("family_opening_link").on(table.linkId, table.id)],
);

/** What a family asks for from its page; whoever has the student in charge settles it with whoever gave consent. */
export const familyRequest = sqliteTable(
  "family_request",
  {
    id: text("id").primaryKey(),
    studentId: text("student_id")
      .notNull()
      .references(() => student.id, { onDelete: "cascade" }),
    linkId: text("link_id").references(() => familyLink.id, { onDelete: "set null" }),
    kind: text("kind", { enum: ["erase", "export", "who-looked"] }).notNull(),
    askedAt: text("asked_at").notNull(),
    settledAt: text("settled_at"),
    settledBy: text("settled_by"),
    answer: text("answer"),
  },
  (table) => [index("family_request_student").on(table.studentId, table.askedAt)],
);

/** Who looked at a student's record, when and at what; no readings stand in it, and no row is ever changed. */
export const recordView = sqliteTable(
  "record_view",
  {
    id: integer("id").primaryKey({ autoIncrement: true }),
    studentId: text("student_id")
      .notNull()
      .references(() => student.id, { onDelete: "cascade" }),
    who: text("who").notNull(),
    role: text("role", { enum: ["owner", "director", "coach", "assistant", "family", "program"] }).notNull(),
    what: text("what", { enum: ["page", "file", "print"] }).notNull(),
    /** The row of the access matrix by which it was reached. */
    place: text("place").notNull(),
    viewedAt: text("viewed_at").notNull(),
  },
  (table) => [index("record_view_student").on(table.studentId, table.id)],
);

/** That something will be erased on a day because nobody needs it any more, and when that was said. */
export const retentionNotice = sqliteTable(
  "retention_notice",
  {
    id: text("id").primaryKey(),
    academyId: text("academy_id")
      .notNull()
      .references(() => academy.id),
    kind: text("kind", { enum: ["departed", "idle", "link"] }).notNull(),
    studentId: text("student_id").references(() => student.id, { onDelete: "cascade" }),
    linkId: text("link_id").references(() => familyLink.id, { onDelete: "cascade" }),
    announcedAt: text("announced_at").notNull(),
    dueDay: text("due_day").notNull(),
    /** Kept after all, by whom and why. */
    heldAt: text("held_at"),
    heldBy: text("held_by"),
    why: text("why"),
  },
  (table) => [index("retention_notice_due").on(table.academyId, table.dueDay)],
);

/** That a student was erased: when, by whom and how much, and nothing by which the student could be found. */
export const erasure = sqliteTable("erasure", {
  id: text("id").primaryKey(),
  academyId: text("academy_id")
    .notNull()
    .references(() => academy.id),
  erasedAt: text("erased_at").notNull(),
  who: text("who").notNull(),
  reason: text("reason", { enum: ["asked", "departed", "idle", "mistake"] }).notNull(),
  sessions: integer("sessions").notNull(),
  readings: integer("readings").notNull(),
});

/** A look as another academy said it, brought by the student's archive: shown as it was said, and never computed anew. */
export const carriedLook = sqliteTable(
  "carried_look",
  {
    sessionId: text("session_id")
      .notNull()
      .references(() => session.id, { onDelete: "cascade" }),
    studentId: text("student_id")
      .notNull()
      .references(() => student.id, { onDelete: "cascade" }),
    fundamentalId: text("fundamental_id").notNull(),
    clubGroup: text("club_group").notNull(),
    /** Name of the academy that said it. */
    saidBy: text("said_by").notNull(),
    policyVersion: text("policy_version").notNull(),
    noiseModelName: text("noise_model_name").notNull(),
    /** JSON: what was said, opaque here. */
    body: text("body").notNull(),
    batchId: text("batch_id")
      .notNull()
      .references(() => importBatch.id),
  },
  (table) => [
    primaryKey({ columns: [table.sessionId, table.fundamentalId, table.clubGroup] }),
    index("carried_look_student").on(table.studentId),
  ],
);
