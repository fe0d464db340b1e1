import { readReadBackReadings } from "@/db/read/read-backs";
import { buildContactCsv, buildFundamentalCsv, buildReadingsCsv, readOnKey } from "@/lib/report/build-downloads";
import { contactCounts } from "@/lib/verdict/contact-counts";
import { dayIn } from "../clock";
import { csvResponse } from "../door/download";
import { noteLookAtMany, requireStudent, requireViewer } from "../gate";
import { loadRosterCsv } from "../roster/load-roster-csv";
import { loadStudentVerdicts } from "../roster/load-verdicts";
import { loadFundamentalSource } from "../season/load-fundamental";
import { chooseClubGroup } from "../settings/club-links";

/** The rows that an address asks for, of all its pages and in their order; without a wish everybody. */
export async function downloadRoster(asked: URLSearchParams): Promise<Response> {
  const viewer = await requireViewer("GET /api/roster/csv");
  const csv = await loadRosterCsv(viewer, Object.fromEntries(asked));
  noteLookAtMany(viewer, "GET /api/roster/csv", csv.studentIds);
  return csvResponse("roster.csv", csv.text);
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
