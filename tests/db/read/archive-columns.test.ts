import { getTableColumns, is } from "drizzle-orm";
import { SQLiteTable } from "drizzle-orm/sqlite-core";
import { describe, expect, it } from "vitest";
import type { z } from "zod";
import { readToldOfStudent } from "@/db/read/archive-told";
import * as base from "@/db/schema";
import * as entry from "@/db/schema-entry";
import * as people from "@/db/schema-people";
import * as plans from "@/db/schema-plans";
import * as privacy from "@/db/schema-privacy";
import * as rereads from "@/db/schema-rereads";
import * as work from "@/db/schema-work";
import { archiveSchema } from "@/lib/domain/archive";
import { studentScope } from "../academy-fixture";
import { openPlanted } from "../told-fixture";

/** Tables of which an archive holds nothing, and why. */
const NO_TABLE: Readonly<Record<string, string>> = {
  fairTest: "of whose seed the lot's order is made; it goes on where it was planned",
  fairStep: "figures over many students; said where the test is",
  fairValue: "stands with the draw that it is of",
  importBatch: "files that came in, with others' names; what came stands in the rows",
  analysis: "computed again; what is said stands in the snapshots",
  rosterList: "computed again; each snapshot says whether it is listed",
  seen: "what a viewer has pressed",
  draft: "not saved yet",
  formReceipt: "answers to forms",
  preference: "a viewer's",
  importSource: "how files are read",
  accessToken: "keys",
  user: "people of the academy, no student",
  authSession: "log-ins",
  account: "log-ins",
  verification: "log-ins",
  twoFactor: "log-ins",
  person: "people of the academy; who had a student in charge is told by name",
  personRole: "people of the academy",
  assistance: "people of the academy",
  invitation: "people of the academy",
  signInTry: "digests of wrong passwords",
  erasure: "counts by which nobody can be found",
};

/** Tables that an archive tells of in a table of its own, beside its structure: see `ToldOfStudent`. */
const TOLD = {
  charge: "charges",
  familyLink: "familyLinks",
  familyOpening: "familyOpenings",
  familyRequest: "familyRequests",
  told: "told",
  waiting: "waiting",
  fairAllocation: "fairAllocations",
  recordView: "recordViews",
  retentionNotice: "retentionNotices",
  carriedLook: "carriedLooks",
  recordChange: "changes",
} as const;

/** Columns of those that are told otherwise, or not at all. */
const NOT_TOLD: Readonly<Record<keyof typeof TOLD, readonly string[]>> = {
  // By the names of the coaches.
  charge: ["id", "coachId", "fromCoachId"],
  // What opens the page.
  familyLink: ["tokenHash"],
  familyOpening: ["id"],
  familyRequest: ["id"],
  told: ["id"],
  waiting: ["id"],
  // Places of an order that is secret until the end; the test is named by its drills.
  fairAllocation: ["id", "testId", "coachId", "place"],
  recordView: ["id"],
  retentionNotice: ["id"],
  carriedLook: [],
  // What is to be undone here, with others' rows in it; the other student is nobody's to name.
  recordChange: ["id", "otherStudentId", "before", "after"],
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
  priorityChoice: ["id"],
  drillDecision: ["id", "assignmentId"],
  noteCoding: ["id"],
  rebaselineChange: ["id"],
  academy: [
    ...["id", "name", "ownerName", "kind", "fixedToday", "createdAt", "keepMonths", "linkDays", "ownConsentAge"],
    "clockSeenAt",
  ],
};

const item = (schema: unknown, ...path: string[]): z.ZodObject => {
  type Part = { shape?: Record<string, unknown>; element?: unknown; unwrap?: () => unknown };
  let at = schema as Part;
  for (const part of path) {
    at = (at.shape?.[part] ?? {}) as Part;
    // A list that files of before don't have.
    if (!at.element && at.unwrap) at = at.unwrap() as Part;
    if (at.element) at = at.element as Part;
  }
  return at as unknown as z.ZodObject;
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
  priorityChoice: [...student, "priorities"],
  filmPlan: [...student, "filmPlans"],
  drillDecision: [...student, "assignments", "decisions"],
  readBack: [...student, "readBacks"],
  readBackItem: [...student, "readBacks", "items"],
  ownFundamental: ["rules", "ownFundamentals"],
  clubRegrouping: ["rules", "clubGroups"],
  owningRule: ["rules", "owningRules"],
  drill: ["rules", "drills"],
  goalBand: ["rules", "goalBands"],
  noiseModel: ["rules", "noiseModels"],
  readerErrorFit: ["rules", "readerErrors"],
  noteCoding: ["rules", "noteCodings"],
  rereadDraw: ["rereads"],
  rereadItem: ["rereads", "items"],
};

const tables = Object.entries({ ...base, ...work, ...rereads, ...entry, ...people, ...privacy, ...plans }).flatMap(
  ([name, value]) => (is(value, SQLiteTable) ? [[name, value] as const] : []),
);

describe("an archive and the tables", () => {
  it("every table stands in an archive or is left out for a reason", () => {
    const places = [WHERE, NO_TABLE, TOLD];
    expect(tables.map(([name]) => name).filter((name) => !places.some((each) => name in each))).toEqual([]);
    expect(tables.length).toBe(places.reduce((sum, each) => sum + Object.keys(each).length, 0));
  });

  it.each(tables.filter(([name]) => name in WHERE))("every column of %s stands in an archive", (name, table) => {
    const shape = Object.keys(item(archiveSchema, ...(WHERE[name] ?? [])).shape);
    const missing = Object.keys(getTableColumns(table)).filter(
      (column) => !shape.includes(column) && !BY_PLACE.has(column) && !WITHOUT[name]?.includes(column),
    );
    expect(shape.length).toBeGreaterThan(0);
    expect(missing).toEqual([]);
  });

  it.each(tables.filter(([name]) => name in TOLD))("every column of %s is told", async (name, table) => {
    const db = await openPlanted(["s1"]);
    const [row] = readToldOfStudent(db, studentScope())[TOLD[name as keyof typeof TOLD]];
    const left = [...BY_PLACE, ...NOT_TOLD[name as keyof typeof TOLD]].filter((each) => each !== "sessionId");
    const missing = Object.keys(getTableColumns(table)).filter(
      (column) => !left.includes(column) && !Object.keys(row ?? {}).includes(column),
    );
    expect(row).toMatchObject({ studentId: "s1" });
    // A session that went elsewhere is told by the change itself.
    expect(missing.filter((column) => name !== "recordChange" || column !== "sessionId")).toEqual([]);
    db.close();
  });
});
