import { index, integer, primaryKey, sqliteTable, text, uniqueIndex } from "drizzle-orm/sqlite-core";
import { academy, student } from "./schema";

/*
 * `user`, `auth_session`, `account`, `verification` and `two_factor` are the log-in library's: their columns are what it asks
 * for. It reads them and writes log-ins; accounts and passwords are written here, together with what belongs to them.
 */

export const user = sqliteTable("user", {
  id: text("id").primaryKey(),
  name: text("name").notNull(),
  email: text("email").notNull().unique(),
  emailVerified: integer("email_verified", { mode: "boolean" }).notNull().default(false),
  image: text("image"),
  createdAt: integer("created_at", { mode: "timestamp_ms" }).notNull(),
  updatedAt: integer("updated_at", { mode: "timestamp_ms" }).notNull(),
  twoFactorEnabled: integer("two_factor_enabled", { mode: "boolean" }).default(false),
});

export const authSession = sqliteTable(
  "auth_session",
  {
    id: text("id").primaryKey(),
    token: text("token").notNull().unique(),
    userId: text("user_id")
      .notNull()
      .references(() => user.id, { onDelete: "cascade" }),
    expiresAt: integer("expires_at", { mode: "timestamp_ms" }).notNull(),
    createdAt: integer("created_at", { mode: "timestamp_ms" }).notNull(),
    updatedAt: integer("updated_at", { mode: "timestamp_ms" }).notNull(),
    ipAddress: text("ip_address"),
    userAgent: text("user_agent"),
  },
  (table) => [index("auth_session_user").on(table.userId)],
);

export const account = sqliteTable(
  "account",
  {
    id: text("id").primaryKey(),
    accountId: text("account_id").notNull(),
    providerId: text("provider_id").notNull(),
    userId: text("user_id")
      .notNull()
      .references(() => user.id, { onDelete: "cascade" }),
    accessToken: text("access_token"),
    refreshToken: text("refresh_token"),
    idToken: text("id_token"),
    accessTokenExpiresAt: integer("access_token_expires_at", { mode: "timestamp_ms" }),
    refreshTokenExpiresAt: integer("refresh_token_expires_at", { mode: "timestamp_ms" }),
    scope: text("scope"),
    password: text("password"),
    createdAt: integer("created_at", { mode: "timestamp_ms" }).notNull(),
    updatedAt: integer("updated_at", { mode: "timestamp_ms" }).notNull(),
  },
  (table) => [index("account_user").on(table.userId)],
);

export const verification = sqliteTable(
  "verification",
  {
    id: text("id").primaryKey(),
    identifier: text("identifier").notNull(),
    value: text("value").notNull(),
    expiresAt: integer("expires_at", { mode: "timestamp_ms" }).notNull(),
    createdAt: integer("created_at", { mode: "timestamp_ms" }).notNull(),
    updatedAt: integer("updated_at", { mode: "timestamp_ms" }).notNull(),
  },
  (table) => [index("verification_identifier").on(table.identifier)],
);

export const twoFactor = sqliteTable(
  "two_factor",
  {
    id: text("id").primaryKey(),
    secret: text("secret").notNull(),
    backupCodes: text("backup_codes").notNull(),
    userId: text("user_id")
      .notNull()
      .references(() => user.id, { onDelete: "cascade" }),
    verified: integer("verified", { mode: "boolean" }).default(true),
    failedVerificationCount: integer("failed_verification_count").default(0),
    lockedUntil: integer("locked_until", { mode: "timestamp_ms" }),
  },
  (table) => [index("two_factor_user").on(table.userId)],
);

/** Somebody who works in an academy; the row stays when they have left, because what they entered names them. */
export const person = sqliteTable("person", {
  userId: text("user_id")
    .primaryKey()
    .references(() => user.id, { onDelete: "cascade" }),
  academyId: text("academy_id")
    .notNull()
    .references(() => academy.id),
  addedAt: text("added_at").notNull(),
  addedBy: text("added_by").notNull(),
  /** Null: works here. */
  endedAt: text("ended_at"),
  endedBy: text("ended_by"),
});

/** What somebody may do; one person may be several things. */
export const personRole = sqliteTable(
  "person_role",
  {
    userId: text("user_id")
      .notNull()
      .references(() => person.userId, { onDelete: "cascade" }),
    role: text("role", { enum: ["owner", "director", "coach", "assistant"] }).notNull(),
  },
  (table) => [primaryKey({ columns: [table.userId, table.role] })],
);

/** For which coach an assistant enters values. */
export const assistance = sqliteTable(
  "assistance",
  {
    assistantId: text("assistant_id")
      .notNull()
      .references(() => person.userId, { onDelete: "cascade" }),
    coachId: text("coach_id")
      .notNull()
      .references(() => person.userId, { onDelete: "cascade" }),
  },
  (table) => [primaryKey({ columns: [table.assistantId, table.coachId] })],
);

/** Who has a student in charge, and from when to when. */
export const charge = sqliteTable(
  "charge",
  {
    id: text("id").primaryKey(),
    studentId: text("student_id")
      .notNull()
      .references(() => student.id, { onDelete: "cascade" }),
    coachId: text("coach_id")
      .notNull()
      .references(() => person.userId, { onDelete: "cascade" }),
    /** `cover`: stands in while the student stays another's. */
    kind: text("kind", { enum: ["own", "cover"] }).notNull(),
    /** Who handed the student over; null: a first coach. */
    fromCoachId: text("from_coach_id").references(() => person.userId),
    /** What the one who hands over wants the other to know. */
    note: text("note"),
    fromDay: text("from_day").notNull(),
    /** The last day; null: until further notice. */
    untilDay: text("until_day"),
    who: text("who").notNull(),
    recordedAt: text("recorded_at").notNull(),
    /** Null: it was not ended by hand. */
    endedAt: text("ended_at"),
    endedBy: text("ended_by"),
  },
  (table) => [index("charge_student").on(table.studentId), index("charge_coach").on(table.coachId)],
);

/** A one-time link by which somebody comes in for the first time, or chooses a new password. Only its hash is kept. */
export const invitation = sqliteTable(
  "invitation",
  {
    id: text("id").primaryKey(),
    academyId: text("academy_id")
      .notNull()
      .references(() => academy.id),
    kind: text("kind", { enum: ["join", "password"] }).notNull(),
    tokenHash: text("token_hash").notNull(),
    name: text("name").notNull(),
    email: text("email").notNull(),
    /** Roles, separated by commas; empty for a new password. */
    roles: text("roles").notNull().default(""),
    /** Ids of the coaches whom an assistant helps, separated by commas. */
    assists: text("assists").notNull().default(""),
    /** Whose password; null: of nobody yet. */
    userId: text("user_id").references(() => user.id, { onDelete: "cascade" }),
    who: text("who").notNull(),
    madeAt: text("made_at").notNull(),
    expiresAt: text("expires_at").notNull(),
    usedAt: text("used_at"),
    revokedAt: text("revoked_at"),
  },
  (table) => [uniqueIndex("invitation_hash").on(table.tokenHash)],
);

/** Wrong passwords: of one account, of one account from a browser that it knows, or of all. Kept without names. */
export const signInTry = sqliteTable("sign_in_try", {
  /** Digest of what is counted. */
  key: text("key").primaryKey(),
  wrong: integer("wrong").notNull(),
  /** Milliseconds since 1970. */
  firstAt: integer("first_at").notNull(),
  lastAt: integer("last_at").notNull(),
  /** Until when the next one is refused unlooked at. */
  waitUntil: integer("wait_until").notNull(),
});
