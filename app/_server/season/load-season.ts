import { readAssignments } from "@/db/read/drills";
import { readPractice } from "@/db/read/practice";
import { readConsents } from "@/db/read/students";
import { consentInForce } from "@/lib/domain/student";
import { buildSeasonPage } from "@/lib/report/build-season";
import type { SeasonPage } from "@/lib/report/page-model";
import { linkTables } from "../archive/table-links";
import type { StudentViewer } from "../gate";
import { loadStudentVerdicts } from "../roster/load-verdicts";
import { contactMentions } from "../session/contact-mentions";
import { loadCodings } from "../session/note-desk";
import { chooseClubGroup, clubLinks } from "../settings/club-links";

/** A student's season, in the club group in hand or the wished one. */
export async function loadSeason(viewer: StudentViewer, wishedClub: string | undefined): Promise<SeasonPage> {
  const { record, tracks, grouping } = await loadStudentVerdicts(viewer);
  const clubGroup = chooseClubGroup(grouping, tracks, wishedClub);
  const { words } = viewer;
  const page = buildSeasonPage(words, {
    student: record.student,
    tracks: tracks.filter((track) => track.history.clubGroup === clubGroup),
    sessions: record.sessions,
    drills: readAssignments(viewer.db, viewer.student),
    events: record.events,
    practice: readPractice(viewer.db, viewer.student),
    consent: consentInForce(readConsents(viewer.db, viewer.student), "measure", viewer.today) ? "given" : "missing",
    asOf: viewer.today,
    today: viewer.today,
    clubGroup,
    grouping,
    seasonStart: record.seasonStart,
    mentions: contactMentions(
      record.sessions,
      clubGroup,
      { from: record.seasonStart, to: viewer.today },
      loadCodings(viewer),
    ),
    clubs: clubLinks(words, grouping, tracks, { clubGroup, path: `/students/${record.student.id}` }),
  });
  return linkTables(words, "season", { student: record.student.id, club: clubGroup ?? undefined }, page);
}
