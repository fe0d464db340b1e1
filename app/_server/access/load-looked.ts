import { readRecordViews } from "@/db/read/record-views";
import { readStudent } from "@/db/read/students";
import { buildLooked, buildLookedCsv, type LookedAt } from "@/lib/report/build-looked";
import type { LookedPage } from "@/lib/report/looked-model";
import { dayAndTimeIn } from "../clock";
import { csvResponse } from "../door/download";
import { requireStudent, type StudentViewer } from "../gate";

function looksOf({ db, student, academy: { zone } }: StudentViewer): LookedAt[] {
  const local = dayAndTimeIn(zone);
  return readRecordViews(db, student).map(({ viewedAt, ...view }) => ({
    ...view,
    at: viewedAt,
    ...local(new Date(viewedAt)),
  }));
}

/** Who looked at a student's record; the look at this very page is among them. */
export function loadLooked(viewer: StudentViewer, page: string | undefined): LookedPage {
  const { id, alias } = readStudent(viewer.db, viewer.student);
  return buildLooked(viewer.words, { student: { id, alias }, today: viewer.today, looks: looksOf(viewer), page });
}

export async function downloadLooked(studentId: string): Promise<Response> {
  const viewer = await requireStudent("GET /api/students/[studentId]/looked/csv", studentId);
  return csvResponse("who-looked.csv", buildLookedCsv(viewer.words, looksOf(viewer)));
}
