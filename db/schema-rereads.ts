import { index, integer, primaryKey, real, sqliteTable, text } from "drizzle-orm/sqlite-core";
import { academy, reading, session, student, swing } from "./schema";

/** Swings drawn at random to be read again without sight of what was read. */
export const rereadDraw = sqliteTable(
  "reread_draw",
  {
    id: text("id").primaryKey(),
    academyId: text("academy_id")
      .notNull()
      .references(() => academy.id),
    /** Who reads again. */
    reader: text("reader").notNull(),
    /** a: the same still, its points placed anew; b: the same film, frame and points chosen anew. */
    level: text("level", { enum: ["a", "b"] }).notNull(),
    /** The draw whose items these are, for a second reader; null: drawn by chance. */
    sameAs: text("same_as"),
    /** Who drew it, and when. */
    who: text("who").notNull(),
    day: text("day").notNull(),
    drawnAt: text("drawn_at").notNull(),
    /** Null: still open, its values told to nobody. */
    finishedOn: text("finished_on"),
    finishedAt: text("finished_at"),
  },
  (table) => [index("reread_draw_academy").on(table.academyId, table.drawnAt)],
);

/** One swing and fundamental of a draw, in the order of reading. */
export const rereadItem = sqliteTable(
  "reread_item",
  {
    drawId: text("draw_id")
      .notNull()
      .references(() => rereadDraw.id, { onDelete: "cascade" }),
    place: integer("place").notNull(),
    studentId: text("student_id")
      .notNull()
      .references(() => student.id, { onDelete: "cascade" }),
    sessionId: text("session_id")
      .notNull()
      .references(() => session.id, { onDelete: "cascade" }),
    swingId: integer("swing_id")
      .notNull()
      .references(() => swing.id, { onDelete: "cascade" }),
    fundamentalId: text("fundamental_id").notNull(),
    /** As the coach had typed it on the day of the draw. */
    filmReference: text("film_reference").notNull(),
    /** What was read again; null: nothing yet. */
    readingId: integer("reading_id").references(() => reading.id, { onDelete: "cascade" }),
  },
  (table) => [
    primaryKey({ columns: [table.drawId, table.place] }),
    index("reread_item_swing").on(table.swingId, table.fundamentalId),
  ],
);

/** A measured reader's error of one fundamental: numbered, dated, never changed; nobody's data in it. */
export const readerErrorFit = sqliteTable(
  "reader_error_fit",
  {
    academyId: text("academy_id")
      .notNull()
      .references(() => academy.id),
    fundamentalId: text("fundamental_id").notNull(),
    number: integer("number").notNull(),
    /** Sessions from this day on are judged with it. */
    fromDay: text("from_day").notNull(),
    /** Sd of one reading, in the fundamental's unit. */
    readerSd: real("reader_sd").notNull(),
    /** Sd of readers' offsets; null: not measured. */
    offsetSd: real("offset_sd"),
    /** Pairs and shared swings that it was fitted to. */
    pairs: integer("pairs").notNull(),
    shared: integer("shared").notNull(),
    /** Of the numbers by which it was fitted. */
    version: text("version").notNull(),
    fittedAt: text("fitted_at").notNull(),
  },
  (table) => [primaryKey({ columns: [table.academyId, table.fundamentalId, table.number] })],
);
