import type { Database } from "@/db/client";
import {
  accessToken,
  formReceipt,
  importSource,
  noteCoding,
  practice,
  preference,
  readBack,
  readBackItem,
  rebaselineChange,
  recordChange,
} from "@/db/schema-entry";
import { insertAnalysis } from "@/db/write/analyses";
import { insertAsking } from "@/db/write/asking";
import { insertRegrouping } from "@/db/write/club-groups";
import { insertDraft } from "@/db/write/drafts";
import { insertAssignment, insertDrill } from "@/db/write/drills";
import { insertEvent } from "@/db/write/events";
import { insertGoalBand } from "@/db/write/goal-bands";
import { insertImport } from "@/db/write/imports";
import { insertLookNoise } from "@/db/write/looks";
import { insertNoiseModel } from "@/db/write/noise-models";
import { insertOwnFundamental } from "@/db/write/own-fundamentals";
import { insertCorrection } from "@/db/write/readings";
import { insertReaderError, insertRereadDraw } from "@/db/write/rereads";
import { insertRosterList } from "@/db/write/roster-lists";
import { insertSeen } from "@/db/write/seen";
import { insertHeight } from "@/db/write/students";
import { SHORT_LIST } from "@/lib/domain/club-grouping";
import { renameGroup } from "@/lib/domain/regroup-clubs";
import { NOTHING_SEEN } from "@/lib/domain/session";
import type { EnteredSession, ImportPlan } from "@/lib/domain/session-entry";
import { academyScope, countingStamp, entered, NOW, openAcademy, sessionOn, studentScope } from "./academy-fixture";
import { fillPeople } from "./fill-people";
import { fillPlans } from "./fill-plans";

const capture = {
  view: "face-on",
  placement: "same",
  placementLabel: "bay 1",
  squareness: "square",
  offBy: null,
  setAsideReason: null,
  seen: NOTHING_SEEN,
  placedBy: null,
  filmReference: null,
} as const;

export function planOf(sessions: readonly (readonly [alias: string, session: EnteredSession])[]): ImportPlan {
  return {
    fileName: "values.csv",
    contentHash: "hash-1",
    form: "long",
    rows: sessions.length,
    newStudents: [],
    sessions: sessions.map(([alias, session]) => ({ alias, session })),
    answers: "[]",
  };
}

export function importDoor(prefix = "i", now = NOW) {
  return { ...countingStamp(prefix, now), scopeOf: (studentId: string) => studentScope(studentId) };
}

/** A session a day from 1 January 2031. */
export function season(sessions: number, swings: number): EnteredSession[] {
  return Array.from({ length: sessions }, (_, index) =>
    sessionOn(new Date(Date.UTC(2031, 0, 1 + index)).toISOString().slice(0, 10), {
      captures: [capture],
      statedCaptureSds: [{ fundamentalId: "hinge", sd: 0.5 }],
      marks: ["wind"],
      swings: Array.from({ length: swings }, (_swing, place) => ({
        number: place + 1,
        note: null,
        readings: [
          entered(80 + ((index * 7 + place * 3) % 20) / 4),
          entered(place, "setup-tilt"),
          entered(null, "top-tilt"),
        ],
      })),
    }),
  );
}

function fillRereads(db: Database, sessionId: string): void {
  const swingId = db.sqlite
    .prepare<[string], number>("SELECT id FROM swing WHERE session_id = ?")
    .pluck()
    .get(sessionId);
  const place = { studentId: "s1", sessionId, swingId: swingId ?? 0, fundamentalId: "hinge" } as const;
  const draw = { id: "r1", reader: "Coach", level: "b", who: "Owner", day: "2031-03-02", drawnAt: NOW } as const;
  insertRereadDraw(db, academyScope(), { ...draw, items: [{ ...place, filmReference: "shelf 1" }] });
  const fit = { fundamentalId: "hinge", fromDay: "2031-03-03", readerSd: 1.2, offsetSd: null, pairs: 12, shared: 0 };
  insertReaderError(db, academyScope(), { ...fit, version: "v" }, NOW);
}

/** How values came in, and what was done to them since: one row a table. */
function fillEntry(db: Database, sessionId: string): void {
  const [academyId, studentId, who, why] = ["a1", "s1", "Owner", "as it was"];
  const swingId =
    db.sqlite.prepare<[string], number>("SELECT id FROM swing WHERE session_id = ?").pluck().get(sessionId) ?? 0;
  const { orm } = db;
  orm.insert(formReceipt).values({ academyId, key: "k1", kind: "session", outcome: "{}", savedAt: NOW }).run();
  orm.insert(preference).values({ academyId, viewer: who, name: "letter-keys", value: "off" }).run();
  orm.insert(noteCoding).values({ academyId, phrase: "clipped it", coding: "{}", who, recordedAt: NOW }).run();
  const source = { fingerprint: "heads", fileName: "values.csv", answers: "[]", updatedAt: NOW };
  orm
    .insert(importSource)
    .values({ academyId, ...source })
    .run();
  const token = { id: "t1", name: "Script", tokenHash: "hash", createdAt: NOW };
  orm
    .insert(accessToken)
    .values({ academyId, who, ...token })
    .run();
  const change = { kind: "session-facts", before: "{}", after: "{}", changedAt: NOW } as const;
  orm
    .insert(recordChange)
    .values({ academyId, studentId, sessionId, who, why, ...change })
    .run();
  orm.insert(rebaselineChange).values({ eventId: "e1", before: "", after: "hinge", who, why, changedAt: NOW }).run();
  const practised = { id: "p1", day: "2031-01-03", minutes: 10, source: "coach", recordedAt: NOW } as const;
  orm
    .insert(practice)
    .values({ studentId, assignmentId: "g1", who, ...practised })
    .run();
  const draw = { id: "rb1", fundamentalId: "hinge", reader: "Coach", drawnAt: NOW };
  orm
    .insert(readBack)
    .values({ studentId, who, ...draw })
    .run();
  orm.insert(readBackItem).values({ readBackId: "rb1", place: 1, swingId, filmReference: "shelf 2" }).run();
}

/** An academy with at least one row in every table. */
export async function openFilledAcademy(file?: string, sessions = 3, swings = 4): Promise<Database> {
  const db = await openAcademy(file);
  const plan = planOf(season(sessions, swings).map((session) => ["Ulla", session]));
  if (insertImport(db, academyScope(), plan, importDoor()).kind !== "imported") throw new Error("not imported");
  const student = studentScope();
  insertCorrection(db, student, { readingId: 1, value: 90, typed: "90", who: "Coach", why: "wrong still", now: NOW });
  insertHeight(db, student, { day: "2031-01-01", cm: 151.5 });
  insertEvent(db, student, { id: "e1", kind: "growth", day: "2031-01-02", note: "", rebaselines: ["hinge"] });
  insertDrill(db, academyScope(), { id: "d1", name: "Wall", fundamentalId: "hinge", how: "Slowly.", cautions: "" });
  const assignment = { id: "g1", drillId: "d1", fundamentalId: "hinge", start: "2031-01-02", end: null, dose: "20" };
  insertAssignment(db, student, { ...assignment, remeasureOn: "2031-01-23" });
  const band = {
    fundamentalId: "hinge",
    clubGroup: "iron",
    scope: "student",
    ageFrom: null,
    ageTo: null,
    studentId: "s1",
    low: 85,
    high: null,
    from: "2031-01-01",
    reason: "wrist",
  } as const;
  insertGoalBand(db, academyScope(), band, countingStamp("band"));
  insertOwnFundamental(db, academyScope(), { id: "own-river", definition: "{}" }, NOW);
  const model = { pool: "hinge iron", learnedUpTo: "2031-01-03", poolSessions: 50, fittedAt: NOW, body: "{}" };
  const { name } = insertNoiseModel(db, academyScope(), { ...model, nameOf: (number) => `hinge-iron-${number}` });
  const sessionId = db.sqlite.prepare<[], string>("SELECT id FROM session ORDER BY day").pluck().get() ?? "";
  insertLookNoise(db, student, [{ sessionId, fundamentalId: "hinge", clubGroup: "iron", noiseModelName: name }]);
  const key = { asOf: "2031-01-03", policyVersion: "p1" };
  const kept = { noiseModel: name, dataRevision: 1, summary: "{}", body: "{}" };
  insertAnalysis(db, student, { fundamentalId: "hinge", clubGroup: "iron", ...key, ...kept });
  insertRosterList(db, academyScope(), { ...key, inputDigest: "d", body: "[]" });
  insertSeen(db, academyScope(), { viewer: "owner", seenAt: NOW, asOf: key.asOf, body: "[]" });
  const taken = { sessions: 2, swingsEach: 5, captureSd: 1, chance: 0.8, after: "2031-01-03" };
  const decided = {
    fundamentalId: "hinge",
    clubGroup: "iron",
    state: "planned",
    day: "2031-01-04",
    who: "Owner",
  } as const;
  insertAsking(db, student, { ...decided, plan: taken }, NOW);
  fillPlans(db);
  const change = renameGroup(SHORT_LIST, { group: "driver", name: "Big stick" });
  if (change.kind !== "ok") throw new Error("not renamed");
  const regrouping = { kind: "rename", change, day: "2031-01-04", who: "Owner", why: "" } as const;
  insertRegrouping(db, academyScope(), regrouping, countingStamp("regrouped"));
  fillRereads(db, sessionId);
  fillEntry(db, sessionId);
  fillPeople(db);
  insertDraft(db, academyScope(), { id: "f1", kind: "import", body: "text", updatedAt: NOW });
  return db;
}
