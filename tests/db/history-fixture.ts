import fc from "fast-check";
import type { Database } from "@/db/client";
import { readEvents } from "@/db/read/events";
import type { KnownThen } from "@/db/read/known";
import { readLookNoise } from "@/db/read/looks";
import { readReadingsInForce } from "@/db/read/readings";
import { readRecordChanges } from "@/db/read/record-changes";
import { readSessionReadings, readSwingNumbers } from "@/db/read/session-readings";
import { readCaptures, readSessions, readStatedCaptureSds } from "@/db/read/sessions";
import { readStudents } from "@/db/read/students";
import { insertSessionCorrection } from "@/db/write/corrections";
import { mergeStudents } from "@/db/write/merge-students";
import { moveSession } from "@/db/write/move-session";
import { updateChangeUndone } from "@/db/write/record-changes";
import { updateSessionFacts } from "@/db/write/session-facts";
import { insertSession } from "@/db/write/sessions";
import { splitSession } from "@/db/write/split-session";
import { NOTHING_SEEN } from "@/lib/domain/session";
import type { EnteredCapture } from "@/lib/domain/session-entry";
import { academyScope, entered, sessionOn, studentScope } from "./academy-fixture";

export const STUDENTS = ["s1", "s2"] as const;

/** One thing done to the record; what it asks for is chosen among what is there by `pick`, so that any list of steps can be run. */
export interface HistoryStep {
  readonly what: "enter" | "change" | "void" | "add" | "facts" | "move" | "split" | "merge" | "undo";
  readonly student: 0 | 1;
  readonly pick: number;
  readonly value: number | null;
  readonly day: number;
}

/** Any thing to do, entering and correcting most often. */
export const anyStep: fc.Arbitrary<HistoryStep> = fc.record({
  what: fc.constantFrom(
    ...([
      "enter",
      "enter",
      "change",
      "change",
      "void",
      "add",
      "facts",
      "move",
      "split",
      "merge",
      "undo",
      "undo",
    ] as const),
  ),
  student: fc.constantFrom(0 as const, 1 as const),
  pick: fc.nat(50),
  value: fc.option(fc.integer({ min: -9, max: 9 })),
  day: fc.integer({ min: 1, max: 4 }),
});

/** The instant of the n-th step. */
export const hourOf = (n: number): string => `2031-03-01T10:${String(n).padStart(2, "0")}:00.000Z`;

const film = (spread: number): EnteredCapture => ({
  view: "face-on",
  placement: "unknown",
  placementLabel: null,
  squareness: spread > 4 ? "off" : "unknown",
  offBy: spread > 4 ? spread : null,
  seen: { ...NOTHING_SEEN, pointingStickLean: spread - 2 },
  placedBy: null,
  setAsideReason: null,
  filmReference: `film ${spread}`,
});

/** Does one step; what can't be done then is passed over. */
export function doStep(db: Database, step: HistoryStep, n: number): void {
  const { what, pick, value } = step;
  const [mine, other] = [studentScope(STUDENTS[step.student]), studentScope(STUDENTS[1 - step.student])];
  const note = { who: "Coach", why: `step ${n}`, now: hourOf(n) };
  const day = `2031-02-0${step.day}`;
  const sessions = readSessions(db, mine);
  const session = sessions[pick % Math.max(1, sessions.length)];
  const turned = pick % 2 === 0 ? [] : ["hinge"];
  if (what === "enter") {
    const readings = [entered(value), entered(pick, "foot-line")];
    const swings = [1, 2, 3].map((number) => ({ number, note: null, readings }));
    const captures = pick % 3 === 0 ? [film(pick % 7)] : [];
    const made = sessionOn(day, { sequence: null, swings, captures, club: pick % 2 === 0 ? "7-iron" : null });
    insertSession(db, mine, made, { now: note.now, newId: () => `n${n}`, batchId: null });
    return;
  }
  if (what === "undo") {
    const open = readRecordChanges(db, mine).filter((change) => change.undoneAt === null);
    const change = open[open.length - 1 - (pick % 2)];
    if (change) updateChangeUndone(db, mine, change.id, note);
    return;
  }
  if (what === "merge") {
    if (pick % 4 === 0) mergeStudents(db, { from: mine, to: other }, turned, note);
    return;
  }
  if (!session) return;
  const sessionId = session.id;
  if (what === "move") moveSession(db, { from: mine, to: other }, { sessionId, turned }, note);
  else if (what === "split") {
    const swings = readSwingNumbers(db, mine, sessionId).slice(0, 1 + (pick % 2));
    const to = pick % 3 === 0 ? other : mine;
    const wish = { sessionId, swings, newId: `n${n}`, day, clubGroup: session.clubGroup, club: session.club, turned };
    splitSession(db, { from: mine, to }, wish, note);
  } else if (what === "facts") {
    const facts = { ...session, day, note: `note ${pick % 3}`, captures: [film(pick % 7)] };
    const reader = pick % 6 === 5 ? "Rival" : session.reader;
    const aside = pick % 5 === 0 ? "rain" : null;
    updateSessionFacts(
      db,
      mine,
      sessionId,
      { ...facts, reader, setAsideReason: aside, clubGroup: pick % 4 === 0 ? "driver" : "iron" },
      note,
    );
  } else correctOne(db, step, n, sessionId);
}

function correctOne(db: Database, { what, student, pick, value }: HistoryStep, n: number, sessionId: string): void {
  const mine = studentScope(STUDENTS[student]);
  const readings = readSessionReadings(db, mine, sessionId);
  const reading = readings[pick % Math.max(1, readings.length)];
  const base = { sessionId, who: "Coach", why: `step ${n}`, now: hourOf(n) };
  if (what === "add") {
    const added = [{ number: 4 + (pick % 3), note: null, readings: [entered(value)] }];
    insertSessionCorrection(db, mine, { ...base, changes: [], added });
  } else if (reading) {
    const kind = what === "void" ? "void" : "change";
    const change = { readingId: reading.id, seen: reading.correctionId, kind, value, typed: `${value}` } as const;
    insertSessionCorrection(db, mine, { ...base, changes: [change], added: [] });
  }
}

/** What is on file of a student, in the form of what was known; a student who was merged into another has nothing. */
export function onFile(db: Database, studentId: string): KnownThen {
  const scope = studentScope(studentId);
  return {
    sessions: readSessions(db, scope),
    captures: readCaptures(db, scope),
    statedCaptureSds: readStatedCaptureSds(db, scope),
    readings: readReadingsInForce(db, scope).map(({ id: _id, correctedAt: _at, ...reading }) => reading),
    events: readEvents(db, scope),
    lookNoise: readLookNoise(db, scope),
  };
}

/** Ids of the students who are listed. */
export const listed = (db: Database): string[] => readStudents(db, academyScope()).map((student) => student.id);

/** Readings that lie in another session than their swing, or are of another student than their session: there may be none. */
export function strayReadings(db: Database): number | undefined {
  return db.sqlite
    .prepare<[], number>(
      `SELECT count(*) FROM reading JOIN swing ON swing.id = swing_id JOIN session ON session.id = reading.session_id
       WHERE swing.session_id <> reading.session_id OR session.student_id <> reading.student_id`,
    )
    .pluck()
    .get();
}
