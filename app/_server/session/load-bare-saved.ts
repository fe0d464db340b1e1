import { notFound } from "next/navigation";
import { readReadingsInForce } from "@/db/read/readings";
import { readSessions } from "@/db/read/sessions";
import { readStudent } from "@/db/read/students";
import { buildBareSaved } from "@/lib/report/build-bare-saved";
import type { SavedPage } from "@/lib/report/saved-model";
import { sayClubGroup } from "@/lib/words/say-club";
import type { StudentViewer } from "../gate";
import { loadAcademyRules } from "../season/student-record";

/** That a session was saved, for whoever reads no report. Nothing is judged for it, and nothing earlier is read. */
export function loadBareSaved(viewer: StudentViewer, sessionId: string): SavedPage {
  const { db, student, words } = viewer;
  const session = readSessions(db, student).find((each) => each.id === sessionId);
  if (!session) return notFound();
  const readings = readReadingsInForce(db, student).filter((each) => each.sessionId === sessionId);
  const { grouping } = loadAcademyRules(db, viewer.scope, viewer.academy);
  return buildBareSaved(words, {
    student: readStudent(db, student),
    session,
    readings: readings.length,
    swings: new Set(readings.map((each) => each.swing)).size,
    clubName: sayClubGroup(words, grouping, session.clubGroup),
  });
}
