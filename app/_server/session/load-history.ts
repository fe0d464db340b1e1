import { readAddedLater, readAliases, readSessionDays } from "@/db/read/history";
import { readCorrections } from "@/db/read/readings";
import { readRecordChanges } from "@/db/read/record-changes";
import { readSessionReadings, readSwingNumbers } from "@/db/read/session-readings";
import { readCaptures } from "@/db/read/sessions";
import { readStudent } from "@/db/read/students";
import { updateChangeUndone } from "@/db/write/record-changes";
import { rowName } from "@/lib/domain/record-change";
import { buildHistory, buildHistoryCsv, type HistoryEntry, type HistorySource } from "@/lib/report/build-history";
import { buildSessionPage } from "@/lib/report/build-session-page";
import type { RecordPage } from "@/lib/report/record-page-model";
import { linkTables } from "../archive/table-links";
import { daysHere, instantOf } from "../clock";
import { csvResponse } from "../door/download";
import { requireStudent, type StudentViewer } from "../gate";
import { loadRules } from "../roster/load-verdicts";
import { loadAcademyRules } from "../season/student-record";
import { findSession } from "./correct-desk";

/** Everything done to a student's record, latest first, each with the session that it is about. */
export function loadEntries(viewer: StudentViewer): readonly (HistoryEntry & { readonly sessionId: string | null })[] {
  const { db, student, academy } = viewer;
  const changes = readRecordChanges(db, student);
  const days = readSessionDays(
    db,
    student,
    changes.flatMap((change) => change.sessionId ?? []),
  );
  const sessionDay = (id: string | null): string => days.get(id ?? "") ?? "";
  const dayOf = daysHere(academy);
  const stamp = (at: string) => ({ at, day: dayOf(at) });
  const entries = [
    ...readCorrections(db, student).map((each) => ({
      kind: "correction" as const,
      ...stamp(each.correctedAt),
      sessionDay: sessionDay(each.sessionId),
      ...each,
    })),
    ...readAddedLater(db, student).map((each) => ({
      kind: "added" as const,
      ...stamp(each.enteredAt),
      who: "",
      why: "",
      sessionId: each.sessionId,
      sessionDay: sessionDay(each.sessionId),
      readings: each.readings,
    })),
    ...changes.map((change) => ({
      kind: "record" as const,
      ...stamp(change.changedAt),
      who: change.who,
      why: change.why,
      sessionId: change.sessionId,
      sessionDay: days.get(change.sessionId ?? "") ?? null,
      change,
      undoneDay: change.undoneAt === null ? null : dayOf(change.undoneAt),
    })),
  ];
  return entries.reverse().sort((a, b) => (a.at < b.at ? 1 : a.at > b.at ? -1 : 0));
}

/** What a history is said with. */
export function loadHistorySource(viewer: StudentViewer): HistorySource {
  const { db, student, scope, academy } = viewer;
  const { fundamentals, grouping } = loadAcademyRules(db, scope, academy);
  const { id, alias } = readStudent(db, student);
  return {
    student: { id, alias },
    entries: loadEntries(viewer),
    fundamentals,
    grouping,
    aliases: readAliases(db, scope),
  };
}

/** What was told after a press: a code that stands in the address, so that it is a message or nothing. */
function sayTold(viewer: StudentViewer, code: string | undefined): string {
  const key = `told.${code}`;
  return code !== undefined && viewer.words.has(key) ? viewer.words.say(key) : "";
}

export function loadHistory(viewer: StudentViewer, told: string | undefined): RecordPage {
  return buildHistory(viewer.words, loadHistorySource(viewer), sayTold(viewer, told));
}

/** The page of one session; null: the student has no such session. */
export function loadSessionPage(viewer: StudentViewer, sessionId: string, told: string | undefined): RecordPage | null {
  const { db, student } = viewer;
  const session = findSession(viewer, sessionId);
  if (!session) return null;
  const source = loadHistorySource(viewer);
  const touched = rowName({ table: "session", key: { id: sessionId } });
  const isAbout = (entry: ReturnType<typeof loadEntries>[number]): boolean =>
    entry.sessionId === sessionId ||
    (entry.kind === "record" && entry.change.after.some((state) => rowName(state) === touched));
  const page = {
    ...source,
    session,
    films: readCaptures(db, student).filter((film) => film.sessionId === sessionId),
    swings: readSwingNumbers(db, student, sessionId),
    readings: readSessionReadings(db, student, sessionId),
    entries: loadEntries(viewer).filter(isAbout),
  };
  const which = { student: student.studentId, session: sessionId };
  return linkTables(viewer.words, "session", which, buildSessionPage(viewer.words, page, sayTold(viewer, told)));
}

export async function downloadHistory(studentId: string): Promise<Response> {
  const viewer = await requireStudent("GET /api/students/[studentId]/history/csv", studentId);
  return csvResponse("history.csv", buildHistoryCsv(viewer.words, loadHistorySource(viewer)));
}

/** Undoes a change as long as nothing rests on it and judges anew; what came of it as a code for the page. */
export async function undoChange(viewer: StudentViewer, data: FormData): Promise<string> {
  const id = String(data.get("changeId") ?? "");
  if (!/^\d{1,15}$/.test(id)) return "undo-not-there";
  const note = { who: viewer.name, now: instantOf(viewer.academy) };
  const outcome = updateChangeUndone(viewer.db, viewer.student, Number(id), note);
  if (outcome.kind === "built-on") return `undo-no-${outcome.by}`;
  if (outcome.kind === "undone") await loadRules(viewer);
  return `undo-${outcome.kind}`;
}
