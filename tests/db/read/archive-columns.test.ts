import { getTableColumns, is } from "drizzle-orm";
import { SQLiteTable } from "drizzle-orm/sqlite-core";
import { describe, expect, it } from "vitest";
import type { z } from "zod";
import * as people from "@/db/schema";
import * as entry from "@/db/schema-entry";
import { consent } from "@/db/schema-privacy";
import * as rereads from "@/db/schema-rereads";
import * as work from "@/db/schema-work";
import { archiveSchema } from "@/lib/domain/archive";

/** Tables of which an archive holds nothing, and why. */
const NO_TABLE: Readonly<Record<string, string>> = {
  importBatch: "files that came in, with others' names; what came stands in the rows",
  analysis: "computed again; what is said stands in the snapshots",
  rosterList: "computed again; each snapshot says whether it is listed",
  seen: "what a viewer has pressed",
  draft: "not saved yet",
  formReceipt: "answers to forms",
  preference: "a viewer's",
  importSource: "how files are read",
  accessToken: "keys",
  recordChange: "what is to be undone here; the archive's changes.csv tells of it",
};

/** Columns that an archive says by their place in it, or not at all. */
const BY_PLACE = new Set([
  ...["academyId", "batchId", "studentId", "sessionId", "swingId", "readingId", "eventId", "drawId", "readBackId"],
  // A student who turned out to be another is in that other's archive; revisions count within one file.
  ...["mergedInto", "revision"],
]);
const WITHOUT: Readonly<Record<string, readonly string[]>> = {
  // Numbers that SQLite gives; rows stand in their order.
  swing: ["id"],
  reading: ["id"],
  correction: ["id"],
  asking: ["id"],
  noteCoding: ["id"],
  rebaselineChange: ["id"],
  academy: ["id", "name", "ownerName", "kind", "fixedToday", "createdAt", "keepMonths", "linkDays", "ownConsentAge"],
};

const item = (schema: unknown, ...path: string[]): z.ZodObject => {
  let at = schema as { shape?: Record<string, unknown>; element?: unknown };
  for (const part of path) {
    at = (at.shape?.[part] ?? {}) as typeof at;
    if (at.element) at = at.element as typeof at;
  }
  return at as z.ZodObject;
};
const student = ["students"];
const session = [...student, "sessions"];
const WHERE: Readonly<Record<string, readonly string[]>> = {
  academy: ["rules"],
  student,
  height: [...student, "heights"],
  consent: [...student, "consents"],
  session,
  capture: [...session, "captures"],
  statedCaptureSd: [...session, "statedCaptureSds"],
  swing: [...session, "swings"],
  reading: [...session, "swings", "readings"],
  correction: [...session, "swings", "readings", "corrections"],
  lookNoise: [...session, "looks"],
  event: [...student, "events"],
  rebaselineChange: [...student, "events", "changes"],
  drillAssignment: [...student, "assignments"],
  practice: [...student, "practice"],
  asking: [...student, "askings"],
  readBack: [...student, "readBacks"],
  readBackItem: [...student, "readBacks", "items"],
  ownFundamental: ["rules", "ownFundamentals"],
  clubRegrouping: ["rules", "clubGroups"],
  drill: ["rules", "drills"],
  goalBand: ["rules", "goalBands"],
  noiseModel: ["rules", "noiseModels"],
  readerErrorFit: ["rules", "readerErrors"],
  noteCoding: ["rules", "noteCodings"],
  rereadDraw: ["rereads"],
  rereadItem: ["rereads", "items"],
};

const tables = Object.entries({ ...people, ...work, ...rereads, ...entry, consent }).flatMap(([name, value]) =>
  is(value, SQLiteTable) ? [[name, value] as const] : [],
);

describe("an archive and the tables", () => {
  it("every table stands in an archive or is left out for a reason", () => {
    expect(tables.map(([name]) => name).filter((name) => !(name in WHERE) && !(name in NO_TABLE))).toEqual([]);
    expect(tables.length).toBe(Object.keys(WHERE).length + Object.keys(NO_TABLE).length);
  });

  it.each(tables.filter(([name]) => name in WHERE))("every column of %s stands in an archive", (name, table) => {
    const shape = Object.keys(item(archiveSchema, ...(WHERE[name] ?? [])).shape);
    const missing = Object.keys(getTableColumns(table)).filter(
      (column) => !shape.includes(column) && !BY_PLACE.has(column) && !WITHOUT[name]?.includes(column),
    );
    expect(shape.length).toBeGreaterThan(0);
    expect(missing).toEqual([]);
  });
});
