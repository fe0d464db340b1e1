import { readDraft } from "@/db/read/drafts";
import { readAssignmentLog } from "@/db/read/drills";
import { readEventLog } from "@/db/read/events";
import { readFamilyRequests } from "@/db/read/family-links";
import { readSaidGroup } from "@/db/read/history";
import { readImportBatchById } from "@/db/read/import-batches";
import { readPerson } from "@/db/read/people";
import { readReadBacks } from "@/db/read/read-backs";
import { readRereadDraws } from "@/db/read/rereads";
import { readMergedInto } from "@/db/read/students";
import { readTrackKeys } from "@/db/read/tracks";
import { BUILT_IN } from "@/lib/domain/catalogue";
import type { StudentScope } from "@/lib/domain/scope";
import { admitToStudent, type Viewer } from "../gate";

const STUDENT = /^(?:\/api)?\/students\/([^/]+)(?:\/([^/]+))?(?:\/([^/]+))?/;
// What an import did is kept after its upload is gone, and how far one is isn't kept at all: neither is asked about.
const DRAFT = /^(?:\/api)?\/import\/(?!past(?:\/|$))([^/]+)(?!.*\/(?:done|state)$)/;
const DRAW = /^\/rereads\/(?!new$)([^/]+)$/;
const COLLEAGUE = /^\/people\/(?!(?:new|charges|keeping)$)([^/]+)$/;
const BATCH = /^\/import\/past\/([^/]+)/;
// Places that stand where the name of a student, of a session, or of a fundamental, may stand.
const BESIDE_STUDENTS = new Set(["new", "erased"]);
const BESIDE_RECORDS = new Set(["new", "sheet"]);
const BESIDE_FUNDAMENTALS = new Set([
  ...["sessions", "events", "history", "known", "merge", "csv"],
  ...["drills", "practice", "read-back", "priority", "goals", "plan", "review"],
  ...["contact", "season", "archive", "take-out", "report"],
  ...["family", "tell", "consent", "departed", "looked", "handing-over", "erase"],
]);

/** Whether a student has the event, drill or read-back of that name; null: no such things are named there. */
function hasRecord(viewer: Viewer, student: StudentScope, kind: string, id: string): boolean | null {
  if (kind === "sessions") return readSaidGroup(viewer.db, student, id) !== undefined;
  if (kind === "events") return readEventLog(viewer.db, student, null).some((event) => event.id === id);
  if (kind === "drills") return readAssignmentLog(viewer.db, student).some((given) => given.id === id);
  if (kind === "family") return readFamilyRequests(viewer.db, student).some((each) => each.id === id);
  if (kind === "read-back") return readReadBacks(viewer.db, student).some((each) => each.id === id);
  return null;
}

function hasTrack(
  viewer: Viewer,
  studentId: string,
  fundamentalId: string | undefined,
  recordId: string | undefined,
): boolean {
  const student = admitToStudent(viewer, studentId);
  if (!student) return false;
  // It leads to the student whom this one turned out to be.
  if (readMergedInto(viewer.db, student) !== null) return true;
  if (fundamentalId !== undefined && recordId !== undefined && !BESIDE_RECORDS.has(recordId)) {
    const there = hasRecord(viewer, student, fundamentalId, recordId);
    if (there !== null) return there;
  }
  if (fundamentalId === undefined || BESIDE_FUNDAMENTALS.has(fundamentalId)) return true;
  const measured = new Set<string>(readTrackKeys(viewer.db, student).map((key) => key.fundamentalId));
  const derivedFrom = BUILT_IN.find((each) => each.id === fundamentalId)?.derivedFrom ?? [fundamentalId];
  return derivedFrom.every((part) => measured.has(part));
}

function isThere(viewer: Viewer, pathname: string): boolean {
  const [, studentId, fundamentalId, recordId] = STUDENT.exec(pathname) ?? [];
  if (studentId !== undefined && !BESIDE_STUDENTS.has(studentId))
    return hasTrack(viewer, studentId, fundamentalId, recordId);
  const batchId = BATCH.exec(pathname)?.[1];
  if (batchId !== undefined) return readImportBatchById(viewer.db, viewer.scope, batchId) !== undefined;
  const drawId = DRAW.exec(pathname)?.[1];
  if (drawId !== undefined) return readRereadDraws(viewer.db, viewer.scope).some(({ id }) => id === drawId);
  const colleagueId = COLLEAGUE.exec(pathname)?.[1];
  if (colleagueId !== undefined) {
    const person = readPerson(viewer.db, colleagueId);
    return person?.academyId === viewer.scope.academyId && person.endedAt === null;
  }
  const draftId = DRAFT.exec(pathname)?.[1];
  return draftId === undefined || readDraft(viewer.db, viewer.scope, draftId) !== undefined;
}

function decoded(pathname: string): string | null {
  try {
    return decodeURIComponent(pathname);
  } catch {
    return null;
  }
}

/**
 * Whether an address names a student, a track or an upload that isn't there for the viewer. Asked at the door, because
 * a page that finds nothing only while it is made answers with an empty body, which says nothing to a browser without
 * scripts. The gate and the loaders ask again: this is no protection.
 */
export function namesNothing(pathname: string, viewer: Viewer): boolean {
  const readable = decoded(pathname);
  return readable === null || !isThere(viewer, readable);
}
