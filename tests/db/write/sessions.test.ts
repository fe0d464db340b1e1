import { describe, expect, test } from "vitest";
import { readReadingsInForce } from "@/db/read/readings";
import {
  readCaptures,
  readLastSessionDays,
  readSessionStandings,
  readSessions,
  readStatedCaptureSds,
} from "@/db/read/sessions";
import { readTrackKeys } from "@/db/read/tracks";
import { insertReadings } from "@/db/write/readings";
import { insertSession } from "@/db/write/sessions";
import { NOTHING_SEEN } from "@/lib/domain/session";
import {
  academyScope,
  countingStamp,
  countRows,
  entered,
  NOW,
  openAcademy,
  revisionOf,
  sessionOn,
  studentScope,
  swings,
} from "../academy-fixture";

const stamped = (prefix = "x") => ({ ...countingStamp(prefix), batchId: null });
const capture = {
  view: "face-on",
  placement: "same",
  placementLabel: "bay 2",
  squareness: "off",
  offBy: 2,
  setAsideReason: null,
  seen: {
    ...NOTHING_SEEN,
    pointingStickLean: 8.5,
    plumbLean: -1,
    lensHeightCm: 100,
    distanceCm: 300,
    framesPerSecond: 60,
  },
  placedBy: "parent",
  filmReference: null,
} as const;

describe("a session", () => {
  test("comes back as it was entered, with its marks, captures and stated camera sds", async () => {
    const db = await openAcademy();
    const facts = { marks: ["wind", "tired"], club: "7", aid: "stick", stanceWidthCm: 41.5, solid: 7, balls: 10 };
    const session = sessionOn("2031-02-01", {
      ...facts,
      captures: [capture],
      statedCaptureSds: [{ fundamentalId: "hinge", sd: 1.25 }],
    });
    const result = insertSession(db, studentScope(), session, stamped());
    expect(result).toEqual({
      kind: "inserted",
      sessionId: "x1",
      sequence: 1,
      swings: 3,
      readings: 3,
      skipped: 0,
      conflicts: [],
    });
    const { captures, statedCaptureSds, swings: _swings, ...row } = session;
    expect(readSessions(db, studentScope())).toEqual([{ id: "x1", studentId: "s1", groupId: null, ...row }]);
    expect(readCaptures(db, studentScope())).toEqual([{ sessionId: "x1", ...captures[0] }]);
    expect(readStatedCaptureSds(db, studentScope())).toEqual([{ sessionId: "x1", ...statedCaptureSds[0] }]);
    expect(revisionOf(db)).toBe(1);
    expect(revisionOf(db, "s2")).toBe(0);
  });

  test("without a sequence takes the next free place of its day and club group", async () => {
    const db = await openAcademy();
    const stamp = stamped();
    const sequence = (change: Parameters<typeof sessionOn>[1]) => {
      const result = insertSession(db, studentScope(), sessionOn("2031-02-01", change), stamp);
      return result.kind === "inserted" ? result.sequence : result;
    };
    expect(sequence({ sequence: null })).toBe(1);
    expect(sequence({ sequence: null })).toBe(2);
    expect(sequence({ sequence: null, clubGroup: "driver" })).toBe(1);
    expect(sequence({ sequence: 7 })).toBe(7);
    expect(sequence({ sequence: null })).toBe(8);
    expect(readSessions(db, studentScope(), "iron").map((one) => one.sequence)).toEqual([1, 2, 7, 8]);
  });

  test("that is on file is refused and named, and so is the same form sent twice; nothing is written", async () => {
    const db = await openAcademy();
    insertSession(db, studentScope(), sessionOn("2031-02-01"), stamped("first"));
    const again = insertSession(db, studentScope(), sessionOn("2031-02-01", { swings: swings(1) }), stamped("second"));
    expect(again).toEqual({ kind: "exists", sessionId: "first1" });
    const sameForm = sessionOn("2031-02-01", { sequence: null });
    expect(insertSession(db, studentScope(), sameForm, stamped("first"))).toEqual({
      kind: "exists",
      sessionId: "first1",
    });
    expect([countRows(db, "session"), countRows(db, "reading"), revisionOf(db)]).toEqual([1, 3, 1]);
  });

  test("is written whole or not at all, wherever the disk fails", async () => {
    const db = await openAcademy();
    for (const table of ["session", "capture", "stated_capture_sd", "swing", "reading"]) {
      db.sqlite.exec(
        `CREATE TRIGGER fail AFTER INSERT ON ${table} WHEN (SELECT count(*) FROM ${table}) >= 1
         BEGIN SELECT RAISE(ABORT, 'disk failed'); END`,
      );
      const session = sessionOn("2031-02-01", {
        captures: [capture],
        statedCaptureSds: [{ fundamentalId: "hinge", sd: 1 }],
      });
      expect(() => insertSession(db, studentScope(), session, stamped())).toThrow("disk failed");
      db.sqlite.exec("DROP TRIGGER fail");
      const rows = ["session", "capture", "stated_capture_sd", "swing", "reading"].map((name) => countRows(db, name));
      expect([...rows, revisionOf(db)]).toEqual([0, 0, 0, 0, 0, 0]);
    }
  });

  test("of a student who is not there, or of another academy, is not written", async () => {
    const db = await openAcademy();
    for (const scope of [studentScope("nobody"), studentScope("t1", "a1")]) {
      expect(() => insertSession(db, scope, sessionOn("2031-02-01"), stamped())).toThrow("no such student");
    }
    expect(countRows(db, "session")).toBe(0);
  });

  test("with a mark that holds a comma is refused, since it would come back as two", async () => {
    const db = await openAcademy();
    const session = sessionOn("2031-02-01", { marks: ["wind, rain"] });
    expect(() => insertSession(db, studentScope(), session, stamped())).toThrow("not a short word");
    expect(countRows(db, "session")).toBe(0);
  });
});

describe("readings added to a session", () => {
  test("fill what is missing, pass over what is the same, and leave what differs as it is", async () => {
    const db = await openAcademy();
    insertSession(db, studentScope(), sessionOn("2031-02-01", { swings: swings(80, 82) }), stamped());
    const added = { sessionId: "x1", reader: null, reading: "first", swings: swings(80, 99, 70) } as const;
    expect(insertReadings(db, studentScope(), added, { now: NOW, batchId: null })).toEqual({
      kind: "inserted",
      swings: 1,
      readings: 1,
      skipped: 1,
      conflicts: [
        { swing: 2, fundamentalId: "hinge", onFile: { value: 82, typed: "82" }, given: { value: 99, typed: "99" } },
      ],
    });
    expect(readReadingsInForce(db, studentScope()).map((one) => one.value)).toEqual([80, 82, 70]);
    expect(revisionOf(db)).toBe(2);
    const nothing = { ...added, swings: swings(80) };
    insertReadings(db, studentScope(), nothing, { now: NOW, batchId: null });
    expect(revisionOf(db)).toBe(2);
  });

  test("again are numbered re-reads of that reader", async () => {
    const db = await openAcademy();
    insertSession(db, studentScope(), sessionOn("2031-02-01", { swings: swings(80) }), stamped());
    for (const value of [81, 82]) {
      const added = { sessionId: "x1", reader: null, reading: "again", swings: swings(value) } as const;
      insertReadings(db, studentScope(), added, { now: NOW, batchId: null });
    }
    const rows = db.sqlite.prepare("SELECT reader, reread, value FROM reading ORDER BY reread").all();
    expect(rows).toEqual([
      { reader: "Coach", reread: 0, value: 80 },
      { reader: "Coach", reread: 1, value: 81 },
      { reader: "Coach", reread: 2, value: 82 },
    ]);
  });

  test("to a session of another student are refused", async () => {
    const db = await openAcademy();
    insertSession(db, studentScope(), sessionOn("2031-02-01"), stamped());
    const added = { sessionId: "x1", reader: null, reading: "first", swings: swings(1) } as const;
    expect(insertReadings(db, studentScope("s2"), added, { now: NOW, batchId: null })).toEqual({
      kind: "unknown-session",
      sessionId: "x1",
    });
  });
});

describe("what an academy has", () => {
  test("tracks by student, fundamental and club group, with sessions and last day; never another academy's", async () => {
    const db = await openAcademy();
    const stamp = stamped();
    const both = [{ number: 1, note: null, readings: [entered(1), entered(2, "foot-line")] }];
    insertSession(db, studentScope(), sessionOn("2031-02-01", { swings: both }), stamp);
    insertSession(db, studentScope(), sessionOn("2031-02-03"), stamp);
    insertSession(db, studentScope(), sessionOn("2031-02-02", { clubGroup: "driver" }), stamp);
    insertSession(db, studentScope("s2"), sessionOn("2031-02-05", { swings: [] }), stamp);
    insertSession(db, studentScope("t1", "a2"), sessionOn("2031-02-09"), stamp);
    const key = { studentId: "s1", fundamentalId: "hinge" };
    const tracks = [
      { ...key, fundamentalId: "foot-line", clubGroup: "iron", sessions: 1, lastDay: "2031-02-01" },
      { ...key, clubGroup: "driver", sessions: 1, lastDay: "2031-02-02" },
      { ...key, clubGroup: "iron", sessions: 2, lastDay: "2031-02-03" },
    ];
    expect(readTrackKeys(db, academyScope())).toEqual(tracks);
    expect(readTrackKeys(db, studentScope())).toEqual(tracks);
    expect(readTrackKeys(db, studentScope("s2"))).toEqual([]);
    expect(readLastSessionDays(db, academyScope())).toEqual([
      { studentId: "s1", lastDay: "2031-02-03", sessions: 3 },
      { studentId: "s2", lastDay: "2031-02-05", sessions: 1 },
    ]);
    const standings = readSessionStandings(db, academyScope());
    expect(standings.map(({ studentId, day, clubGroup }) => [studentId, day, clubGroup])).toEqual([
      ["s1", "2031-02-01", "iron"],
      ["s1", "2031-02-02", "driver"],
      ["s1", "2031-02-03", "iron"],
      ["s2", "2031-02-05", "iron"],
    ]);
    expect(standings[0]).toMatchObject({ circumstance: "unaided", setAsideReason: null });
  });
});
