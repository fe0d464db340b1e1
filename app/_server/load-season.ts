import { readAssignments } from "@/db/read/drills";
import { readConsents } from "@/db/read/students";
import { CLUB_GROUPS, type ClubGroup, isClubGroup } from "@/lib/domain/club-group";
import { consentInForce } from "@/lib/domain/student";
import { buildSeasonPage } from "@/lib/report/build-season";
import type { SeasonPage } from "@/lib/report/page-model";
import type { StudentViewer } from "./gate";
import { loadStudentVerdicts } from "./load-verdicts";

/** The club group to show: the wished one where the student has it, else the one with most sessions. */
export function chooseClubGroup(
  tracks: readonly { readonly history: { readonly clubGroup: ClubGroup; readonly sessions: readonly unknown[] } }[],
  wished: string | undefined,
): ClubGroup | null {
  if (wished !== undefined && isClubGroup(wished) && tracks.some((track) => track.history.clubGroup === wished))
    return wished;
  let best: ClubGroup | null = null;
  let most = 0;
  for (const clubGroup of CLUB_GROUPS) {
    const sessions = Math.max(
      0,
      ...tracks.filter((track) => track.history.clubGroup === clubGroup).map((track) => track.history.sessions.length),
    );
    if (sessions > most) [best, most] = [clubGroup, sessions];
  }
  return best;
}

/** A student's season, in the club group in hand or the wished one. */
export async function loadSeason(viewer: StudentViewer, wishedClub: string | undefined): Promise<SeasonPage> {
  const { record, tracks } = await loadStudentVerdicts(viewer);
  const clubGroup = chooseClubGroup(tracks, wishedClub);
  const { words } = viewer;
  return buildSeasonPage(words, {
    student: record.student,
    tracks: tracks.filter((track) => track.history.clubGroup === clubGroup),
    sessions: record.sessions,
    drills: readAssignments(viewer.db, viewer.student),
    events: record.events,
    consent: consentInForce(readConsents(viewer.db, viewer.student), "measure", viewer.today) ? "given" : "missing",
    asOf: viewer.today,
    today: viewer.today,
    clubGroup,
    clubs: CLUB_GROUPS.filter((group) => tracks.some((track) => track.history.clubGroup === group)).map((group) => ({
      href: `/students/${record.student.id}?club=${group}`,
      label: words.say(`club.${group}`),
      current: group === clubGroup ? "yes" : "no",
    })),
  });
}
