import { readErasedGroup } from "@/db/read/erased-group";
import { type Notice, readNotices } from "@/db/read/keeping";
import { readPreference } from "@/db/read/preferences";
import { deleteEndedLink, deleteNotice } from "@/db/write/keeping";
import { insertPreference } from "@/db/write/preferences";
import { deleteRemains } from "@/db/write/remains";
import { ERASING_THRESHOLDS } from "@/lib/verdict/erasing-thresholds";
import { readClock, timeIn } from "../clock";
import { clearTracesSoon } from "../erase/clear-traces";
import { eraseGroup } from "../erase/erase-group";
import { forgetInMemory } from "../erase/forget-in-memory";
import { dropCopiesBeside, dropLeftovers } from "../erase/old-copies";
import { scopeForJudging, type Viewer } from "../gate";
import { dropOldFiles } from "../import/past-imports";
import { announce } from "./announce";
import { PROGRAM } from "./program";
import { watchClock } from "./watch-clock";

const DONE = "kept-day";
const DAY_MS = 24 * 3600 * 1000;

/** What a day's work did; `waits`: nothing, since nobody has said that the clock is right; `done-before`: or too early. */
export type DailyWork =
  | { readonly kind: "done"; readonly students: number; readonly links: number }
  | { readonly kind: "waits" }
  | { readonly kind: "done-before" };

function isTime({ db, scope, academy, today }: Viewer): boolean {
  // The demo's day stands still: nothing runs out there.
  if (academy.fixedToday !== null) return false;
  const last = readPreference(db, scope, PROGRAM, DONE);
  if (last !== undefined && last >= today) return false;
  return Number(timeIn(academy.zone, readClock()).slice(0, 2)) >= ERASING_THRESHOLDS.nightHour.value;
}

function before(days: number): Date {
  return new Date(readClock().getTime() - days * DAY_MS);
}

function eraseDue(viewer: Viewer, notice: Notice): "student" | "link" | null {
  const { db, scope, words } = viewer;
  if (notice.studentId === null) return null;
  const student = scopeForJudging(db, scope, notice.studentId);
  if (notice.linkId !== null) {
    deleteEndedLink(db, student, notice.linkId);
    return "link";
  }
  const reason = notice.kind === "departed" ? "departed" : "idle";
  const erased = eraseGroup(db, readErasedGroup(db, student), { who: words.say("erase.program"), reason, words });
  if (erased) forgetInMemory(viewer, erased.naming);
  else deleteNotice(db, scope, notice.id);
  return erased ? "student" : null;
}

/**
 * A day's work, once a day of the academy: announces what runs out, erases what was announced for today or before, lets go of
 * forms, answers and copies that have waited long enough. Killed midway, the next start goes on where it stopped; every part
 * of it done twice is done once.
 */
export async function keepToday(viewer: Viewer): Promise<DailyWork> {
  const { db, scope, today } = viewer;
  if (!isTime(viewer)) return { kind: "done-before" };
  if (watchClock(viewer) !== null) return { kind: "waits" };
  // Announced before the last day's work at the least, so never on the day on which it is erased.
  const due = announce(viewer).filter(({ dueDay }) => dueDay <= today);
  const counts = { student: 0, link: 0 };
  for (const notice of due) {
    // A student's links go with the student.
    if (!readNotices(db, scope).some(({ id }) => id === notice.id)) continue;
    const gone = eraseDue(viewer, notice);
    if (gone !== null) counts[gone] += 1;
  }
  if (counts.student > 0) await clearTracesSoon(db);
  const { draftDays, receiptDays, tryDays } = ERASING_THRESHOLDS;
  deleteRemains(db, scope, {
    drafts: before(draftDays.value).toISOString(),
    receipts: before(receiptDays.value).toISOString(),
    tries: before(tryDays.value),
  });
  dropOldFiles(viewer);
  dropCopiesBeside(db.file);
  dropLeftovers(db.file);
  insertPreference(db, scope, { viewer: PROGRAM, name: DONE, value: today });
  return { kind: "done", students: counts.student, links: counts.link };
}
