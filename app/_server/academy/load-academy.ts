import { readAcademyFilms } from "@/db/read/academy-films";
import { dayFromNumber, dayNumber } from "@/lib/domain/calendar-day";
import type { AcademyPage } from "@/lib/report/academy-model";
import type { AcademySource } from "@/lib/report/academy-source";
import { buildAcademyPage } from "@/lib/report/build-academy";
import { filmState } from "@/lib/report/film-state";
import { BRIEF_THRESHOLDS } from "@/lib/verdict/brief-thresholds";
import { linkTables } from "../archive/table-links";
import type { Viewer } from "../gate";
import { loadWhole } from "../roster/load-whole";
import { countedFrom, groupsOf } from "./groups-of";

/** Days of films that are counted. Days; twelve weeks, as long as the roster's longest wait for a film. Own choice. */
const FILM_DAYS = 84;

const WEEK = 7;

export { academyTitle } from "@/lib/report/build-academy";

/** What an academy's page rests on, cut to the group that is asked for where that may be told; else of everybody. */
export async function loadAcademy(viewer: Viewer, asked: { readonly of?: string | undefined }): Promise<AcademySource> {
  const { db, scope, academy, today } = viewer;
  const whole = await loadWhole(viewer, {});
  const { everyone, brief } = whole;
  const { entries, fundamentals, tracks } = everyone;
  const films = readAcademyFilms(db, scope, dayFromNumber(dayNumber(today) - FILM_DAYS + 1));
  const clubs = new Map<string, Set<string>>(entries.map(({ student }) => [student.id, new Set<string>()]));
  for (const { studentId, clubGroup } of [...films, ...everyone.all]) clubs.get(studentId)?.add(clubGroup);
  const groups = groupsOf(viewer, whole, (studentId) => clubs.get(studentId));
  const group = groups?.told.find(({ id }) => id === asked.of) ?? null;
  const isCounted = (of: { readonly studentId: string; readonly clubGroup: string }): boolean =>
    group === null || (group.studentIds.has(of.studentId) && (group.club === null || group.club === of.clubGroup));
  const stalled = brief.lists.get("stalled") ?? new Set<string>();
  return {
    academyName: academy.name,
    today,
    from: countedFrom(viewer, whole),
    groups,
    group,
    students: group === null ? entries.length : group.studentIds.size,
    tracks: everyone.all.filter(isCounted),
    films: films.filter(isCounted).map((film) => filmState(film, tracks.get(film.studentId) ?? [])),
    weeks: { films: FILM_DAYS / WEEK, stalled: BRIEF_THRESHOLDS.stalledDays.value / WEEK },
    stalled: [...stalled].filter((id) => group === null || group.studentIds.has(id)).length,
    fundamentals,
  };
}

/** How the academy gets on. */
export async function loadAcademyPage(
  viewer: Viewer,
  asked: { readonly of?: string | undefined },
): Promise<AcademyPage> {
  const source = await loadAcademy(viewer, asked);
  return linkTables(viewer.words, "academy", { group: source.group?.id }, buildAcademyPage(viewer.words, source));
}
