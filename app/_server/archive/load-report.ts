import { buildReport } from "@/lib/report/build-report";
import type { ReportPage } from "@/lib/report/report-model";
import { sayClubGroup } from "@/lib/words/say-club";
import type { StudentViewer } from "../gate";
import { loadStudentVerdicts } from "../roster/load-verdicts";
import { loadFundamental } from "../season/load-fundamental";
import { loadSeason } from "../season/load-season";
import { chooseClubGroup } from "../settings/club-links";
import { linkTables } from "./table-links";

/** The season of one student as a report, in the club group in hand or the wished one. */
export async function loadReport(viewer: StudentViewer, wishedClub: string | undefined): Promise<ReportPage> {
  const { record, tracks, grouping } = await loadStudentVerdicts(viewer);
  const clubGroup = chooseClubGroup(grouping, tracks, wishedClub);
  const mine = tracks.filter((track) => track.history.clubGroup === clubGroup);
  const sessions = record.sessions.filter((session) => session.clubGroup === clubGroup && session.day <= viewer.today);
  const ids = new Set(sessions.map((session) => session.id));
  const swings = new Set(
    record.readings
      .filter((reading) => ids.has(reading.sessionId))
      .map((reading) => `${reading.sessionId} ${reading.swing}`),
  );
  const counted = new Set(
    mine.flatMap(({ history }) =>
      history.sessions.filter(({ apart }) => apart === null).map(({ session }) => session.id),
    ),
  );
  const fundamentals = [];
  for (const { history } of mine)
    fundamentals.push({
      fundamental: history.fundamental,
      page: await loadFundamental(viewer, history.fundamental.id, history.clubGroup),
    });
  const page = buildReport(viewer.words, {
    student: record.student,
    today: viewer.today,
    seasonStart: record.seasonStart,
    clubName: clubGroup === null ? "" : sayClubGroup(viewer.words, grouping, clubGroup),
    season: await loadSeason(viewer, clubGroup ?? undefined),
    fundamentals,
    sessions,
    swings: swings.size,
    events: record.events,
    views: record.captures.filter((capture) => ids.has(capture.sessionId)).map((capture) => capture.squareness),
    setAside: sessions.filter((session) => !counted.has(session.id)).length,
  });
  return linkTables(viewer.words, "report", { student: record.student.id, club: clubGroup ?? undefined }, page);
}
