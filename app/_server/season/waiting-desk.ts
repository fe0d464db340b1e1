import { randomUUID } from "node:crypto";
import { readAssignments } from "@/db/read/drills";
import { readMeasuredIds } from "@/db/read/readings";
import { readWaiting } from "@/db/read/waiting";
import { insertWaiting, updateWaitingEnded } from "@/db/write/waiting";
import { dayFromNumber, dayNumber } from "@/lib/domain/calendar-day";
import { buildWaiting } from "@/lib/report/build-waiting";
import type { HappenPart } from "@/lib/report/happen-model";
import { instantOf } from "../clock";
import { whyNotRecorded } from "../consent/consent-gate";
import type { StudentViewer } from "../gate";
import { loadAcademyRules } from "./student-record";

/** Ids of what is measured of the student, and of what a drill runs for or is to begin for. */
function standingOf({ db, student, today }: StudentViewer) {
  const measured: readonly string[] = readMeasuredIds(db, student);
  const running = readAssignments(db, student).filter(({ end }) => end === null || end >= today);
  return {
    measured: new Set(measured),
    drilled: new Set(running.map(({ fundamentalId }) => fundamentalId)),
  };
}

/** What of a student waits on purpose, and what may; null: nothing is measured without a drill. */
export function loadWaiting(viewer: StudentViewer): HappenPart | null {
  const { db, scope, student, academy, words } = viewer;
  const { measured, drilled } = standingOf(viewer);
  return buildWaiting(words, {
    studentId: student.studentId,
    measured: loadAcademyRules(db, scope, academy).fundamentals.filter(({ id }) => measured.has(id)),
    drilled,
    waits: readWaiting(db, student),
    whyNot: whyNotRecorded(viewer, student),
  });
}

function dayBefore(day: string): string {
  return dayFromNumber(dayNumber(day) - 1);
}

/** Marks from today on that a fundamental waits on purpose, or ends it; yesterday then was the last day. */
export function moveWaiting(viewer: StudentViewer, data: FormData): "updated" | "unchanged" {
  const { db, student, today, name, academy } = viewer;
  const fundamentalId = String(data.get("fundamentalId") ?? "");
  const now = instantOf(academy);
  if (data.get("wish") === "end")
    return updateWaitingEnded(db, student, { fundamentalId, until: dayBefore(today), now });
  const { measured, drilled } = standingOf(viewer);
  if (!measured.has(fundamentalId) || drilled.has(fundamentalId) || whyNotRecorded(viewer, student) !== null)
    return "unchanged";
  return insertWaiting(db, student, {
    ...{ id: randomUUID(), fundamentalId, fromDay: today, who: name, recordedAt: now },
  });
}

/** A drill that is given ends the wait for its fundamental, on the day before its first. To be called within its transaction. */
export function endWaiting({ db, student, academy }: StudentViewer, fundamentalId: string, start: string): void {
  updateWaitingEnded(db, student, { fundamentalId, until: dayBefore(start), now: instantOf(academy) });
}
