import { readReadBackReadings } from "@/db/read/read-backs";
import {
  buildContactCsv,
  buildFundamentalCsv,
  buildReadingsCsv,
  buildRosterCsv,
  readOnKey,
} from "@/lib/report/build-downloads";
import { contactCounts } from "@/lib/verdict/contact-counts";
import { dayIn } from "../clock";
import { csvResponse } from "../door/download";
import { requireStudent, requireViewer } from "../gate";
import { loadEveryone } from "../roster/load-roster";
import { loadStudentVerdicts } from "../roster/load-verdicts";
import { loadFundamentalSource } from "../season/load-fundamental";
import { chooseClubGroup } from "../settings/club-links";

export async function downloadRoster(): Promise<Response> {
  const viewer = await requireViewer("GET /api/roster/csv");
  const { entries, all } = await loadEveryone(viewer);
  return csvResponse(
    "roster.csv",
    buildRosterCsv(new Map(entries.map((entry) => [entry.student.id, entry.student.alias])), all),
  );
}

export async function downloadReadings(studentId: string): Promise<Response> {
  const viewer = await requireStudent("GET /api/students/[studentId]/csv", studentId);
  const readOn = readReadBackReadings(viewer.db, viewer.student).map(
    (each) => [readOnKey(each), dayIn(viewer.academy.zone, new Date(each.readAt))] as const,
  );
  return csvResponse("readings.csv", buildReadingsCsv((await loadStudentVerdicts(viewer)).record, new Map(readOn)));
}

export async function downloadFundamental(
  studentId: string,
  fundamental: string,
  club: string | undefined,
): Promise<Response> {
  const viewer = await requireStudent("GET /api/students/[studentId]/[fundamental]/csv", studentId);
  return csvResponse(`${fundamental}.csv`, buildFundamentalCsv(await loadFundamentalSource(viewer, fundamental, club)));
}

export async function downloadContact(studentId: string, club: string | undefined): Promise<Response> {
  const viewer = await requireStudent("GET /api/students/[studentId]/contact/csv", studentId);
  const { record, tracks, grouping } = await loadStudentVerdicts(viewer);
  const clubGroup = chooseClubGroup(grouping, tracks, club);
  const days = { from: record.seasonStart, to: viewer.today };
  return csvResponse("contact.csv", buildContactCsv(contactCounts(record.sessions, clubGroup ?? "", days)));
}
