import type { AcademyGroup, AcademyGroups } from "@/lib/report/academy-groups";
import type { AcademyPage } from "@/lib/report/academy-model";
import type { AcademySource, RecordedRow } from "@/lib/report/academy-source";
import { buildAcademyPage } from "@/lib/report/build-academy";
import { countRecorded } from "@/lib/report/count-recorded";
import type { TrackSummary } from "@/lib/report/track-summary";
import { BRIEF_THRESHOLDS } from "@/lib/verdict/brief-thresholds";
import { linkTables } from "../archive/table-links";
import type { Viewer } from "../gate";
import { loadWhole } from "../roster/load-whole";
import { type CountedFilm, FILM_DAYS, loadCountedFilms, readRecorded } from "./counted-films";
import { countedFrom, groupsOf } from "./groups-of";

const WEEK = 7;

export { academyTitle } from "@/lib/report/build-academy";

/** Whether a film or a track is a group's; null: everybody's are. */
function isOf(group: AcademyGroup | null) {
  return (of: { readonly studentId: string; readonly clubGroup: string }): boolean =>
    group === null || (group.studentIds.has(of.studentId) && (group.club === null || group.club === of.clubGroup));
}

/** How many students have a track of each fundamental. */
function studentsByFundamental(tracks: readonly TrackSummary[]): ReadonlyMap<string, number> {
  const students = new Map<string, Set<string>>();
  for (const { fundamentalId, studentId } of tracks)
    students.set(fundamentalId, (students.get(fundamentalId) ?? new Set()).add(studentId));
  return new Map([...students].map(([fundamentalId, ids]) => [fundamentalId, ids.size]));
}

/** What an academy's page rests on, cut to the group that is asked for where that may be told; else of everybody. */
export async function loadAcademy(viewer: Viewer, asked: { readonly of?: string | undefined }): Promise<AcademySource> {
  const { academy, today } = viewer;
  const whole = await loadWhole(viewer, {});
  const { everyone, brief } = whole;
  const { entries, fundamentals, tracks } = everyone;
  const films = loadCountedFilms(viewer, tracks);
  const clubs = new Map<string, Set<string>>(entries.map(({ student }) => [student.id, new Set<string>()]));
  for (const { studentId, clubGroup } of [...films, ...everyone.all]) clubs.get(studentId)?.add(clubGroup);
  const groups = groupsOf(viewer, whole, (studentId) => clubs.get(studentId));
  const group = groups?.told.find(({ id }) => id === asked.of) ?? null;
  const isCounted = isOf(group);
  const stalled = brief.lists.get("stalled") ?? new Set<string>();
  return {
    academyName: academy.name,
    today,
    from: countedFrom(viewer, whole),
    groups,
    group,
    students: group === null ? entries.length : group.studentIds.size,
    tracks: everyone.all.filter(isCounted),
    leftOut: studentsByFundamental(everyone.all.filter((track) => !isCounted(track))),
    films: films.filter(isCounted).map(({ state }) => state),
    weeks: { films: FILM_DAYS / WEEK, stalled: BRIEF_THRESHOLDS.stalledDays.value / WEEK },
    stalled: [...stalled].filter((id) => group === null || group.studentIds.has(id)).length,
    fundamentals,
    recorded: recordedOf(viewer, films, groups, group),
  };
}

/** Of everybody and each coach, as far as a coach's students may be counted; of a group that is asked for of that alone. */
function recordedOf(
  viewer: Viewer,
  films: readonly CountedFilm[],
  groups: AcademyGroups | null,
  group: AcademyGroup | null,
): readonly RecordedRow[] {
  const { drilled, waiting } = readRecorded(viewer);
  const coaches = (groups?.told ?? []).filter(({ view }) => (view.coach ?? "") !== "");
  return (group === null ? [null, ...coaches] : [group]).map((each) => ({
    group: each,
    counts: countRecorded(films.filter(isOf(each)), drilled, waiting),
  }));
}

/** How the academy gets on. */
export async function loadAcademyPage(
  viewer: Viewer,
  asked: { readonly of?: string | undefined },
): Promise<AcademyPage> {
  const source = await loadAcademy(viewer, asked);
  return linkTables(viewer.words, "academy", { group: source.group?.id }, buildAcademyPage(viewer.words, source));
}
