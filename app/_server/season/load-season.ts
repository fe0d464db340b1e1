import { readAssignments } from "@/db/read/drills";
import { readPractice, readSaidPain } from "@/db/read/practice";
import { buildPainNotices } from "@/lib/report/build-pain-notices";
import { buildSeasonPage } from "@/lib/report/build-season";
import { filmDays } from "@/lib/report/film-days";
import type { SeasonPage } from "@/lib/report/page-model";
import { linkTables } from "../archive/table-links";
import { standingOf } from "../consent/consent-gate";
import { practiceByDrill } from "../drill/drill-since";
import { type StudentViewer, seesPain } from "../gate";
import { loadStudentVerdicts } from "../roster/load-verdicts";
import { contactMentions } from "../session/contact-mentions";
import { loadCodings } from "../session/note-desk";
import { chooseClubGroup, clubLinks } from "../settings/club-links";
import { loadCarried } from "./load-carried";
import { loadStudentWork } from "./load-work";
import { loadProvable } from "./provable";

/**
 * A student's season, in the club group in hand or the wished one.
 *
 * @param pain `said`: what stops the work is told to whoever may know it
 */
export async function loadSeason(
  viewer: StudentViewer,
  wishedClub: string | undefined,
  pain: "said" | "left-out" = "left-out",
): Promise<SeasonPage> {
  const { record, tracks, grouping } = await loadStudentVerdicts(viewer);
  const clubGroup = chooseClubGroup(grouping, tracks, wishedClub);
  const { words } = viewer;
  const shown = tracks.filter((track) => track.history.clubGroup === clubGroup);
  const provable = await loadProvable(viewer, shown, filmDays({ sessions: record.sessions, clubGroup }).length);
  const page = buildSeasonPage(words, {
    student: record.student,
    tracks: shown,
    provable,
    fundamentals: record.fundamentals,
    ...loadStudentWork(viewer, clubGroup, pain),
    owningRules: record.owningRules,
    sessions: record.sessions,
    drills: readAssignments(viewer.db, viewer.student),
    events: record.events,
    practice: readPractice(viewer.db, viewer.student),
    practised: practiceByDrill(viewer),
    consent: standingOf(viewer, viewer.student, "measure"),
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
  const { fundamentals } = record;
  const carried = loadCarried(viewer, { fundamentals, clubGroup, of: "latest" });
  return linkTables(
    words,
    "season",
    { student: record.student.id, club: clubGroup ?? undefined },
    { ...page, carried },
  );
}

/**
 * The season as its page shows it: whoever may know what hurts is told there. What else is made of a season, a report or a
 * file, says nothing of it.
 */
export async function loadSeasonPage(viewer: StudentViewer, wishedClub: string | undefined): Promise<SeasonPage> {
  const page = await loadSeason(viewer, wishedClub, "said");
  const pain = seesPain(viewer, viewer.student);
  const said = pain === null ? [] : readSaidPain(viewer.db, pain);
  return { ...page, notices: [...buildPainNotices(viewer.words, said, viewer.academy.seasonStart), ...page.notices] };
}
