import { type FiledAssignment, readAssignments } from "@/db/read/drills";
import { readPractice } from "@/db/read/practice";
import type { DrillPractice } from "@/lib/domain/drill-practice";
import { buildReview } from "@/lib/report/build-review";
import { buildStays } from "@/lib/report/build-stays";
import type { ReviewPage } from "@/lib/report/review-model";
import type { ReviewDrill, ReviewTrack } from "@/lib/report/review-source";
import { decidePlateau } from "@/lib/verdict/plateau";
import { sayClubGroup } from "@/lib/words/say-club";
import { linkTables } from "../archive/table-links";
import { practiceByDrill, practiceCounter } from "../drill/drill-since";
import type { StudentViewer } from "../gate";
import { loadStudentVerdicts } from "../roster/load-verdicts";
import { chooseClubGroup, clubLinks } from "../settings/club-links";
import { loadSeason } from "./load-season";
import { daysOf, recentPractice } from "./recent-practice";
import { loadStartLevel } from "./start-levels";

/** A drill with what was asked for and what was logged; null: it has not begun. */
function reviewDrill(given: FiledAssignment, counted: DrillPractice | undefined): ReviewDrill | null {
  return counted === undefined ? null : { given, done: counted.practised, asked: counted.asked };
}

/** The season of one student for ten minutes of talk, in the club group in hand or the wished one. */
export async function loadReview(viewer: StudentViewer, wishedClub: string | undefined): Promise<ReviewPage> {
  const { words, db, student, today } = viewer;
  const { record, tracks, grouping } = await loadStudentVerdicts(viewer);
  const clubGroup = chooseClubGroup(grouping, tracks, wishedClub);
  const { seasonStart } = record;
  const practice = readPractice(db, student).filter(({ voidedAt, day }) => voidedAt === null && day <= today);
  const drills = readAssignments(db, student);
  const facts = { practice, drills, events: record.events, count: practiceCounter(viewer), today };
  const practised = practiceByDrill(viewer);
  const reviewed: ReviewTrack[] = [];
  for (const track of tracks.filter(({ history }) => history.clubGroup === clubGroup))
    reviewed.push({
      ...track,
      start: await loadStartLevel(viewer, track.history),
      plateau: decidePlateau(track.history, track.verdict, recentPractice(facts, track.history.fundamental.id), today),
      retained: buildStays(words, { ...track, practice, drills, today })?.sentence ?? "",
    });
  const films = record.sessions.filter(
    (session) => session.clubGroup === clubGroup && session.day >= seasonStart && session.day <= today,
  );
  const [first, last] = [films[0]?.day, films.at(-1)?.day];
  const season = await loadSeason(viewer, clubGroup ?? undefined);
  const page = buildReview(words, {
    student: record.student,
    season: {
      ...season,
      clubGroups: season.clubGroups && {
        ...season.clubGroups,
        links: clubLinks(words, grouping, tracks, { clubGroup, path: `/students/${record.student.id}/review` }),
      },
    },
    tracks: reviewed,
    drills: drills
      .filter(({ end }) => (end ?? today) >= seasonStart)
      .flatMap((given) => reviewDrill(given, practised.get(given.id)) ?? []),
    practiceDays: daysOf(practice, seasonStart).length,
    films: first === undefined || last === undefined ? null : { first, last, count: films.length },
    clubName: clubGroup === null ? "" : sayClubGroup(words, grouping, clubGroup),
    seasonStart,
    today,
  });
  return linkTables(words, "review", { student: record.student.id, club: clubGroup ?? undefined }, page);
}
