import { type AcademyFilm, readAcademyFilms } from "@/db/read/academy-films";
import { readDrilledStudents, readWaitingStudents } from "@/db/read/recorded";
import { dayFromNumber, dayNumber } from "@/lib/domain/calendar-day";
import { type FilmState, filmState } from "@/lib/report/film-state";
import type { TrackSummary } from "@/lib/report/track-summary";
import type { Viewer } from "../gate";

/** Days of films that are counted. Days; twelve weeks, as long as the roster's longest wait for a film. Own choice. */
export const FILM_DAYS = 84;

/** A film of the latest weeks with what came of it. */
export type CountedFilm = AcademyFilm & { readonly state: FilmState };

function filmedFrom(today: string): string {
  return dayFromNumber(dayNumber(today) - FILM_DAYS + 1);
}

/** The films of those weeks of whoever is here, each with what came of it. */
export function loadCountedFilms(
  { db, scope, today }: Viewer,
  tracks: ReadonlyMap<string, readonly TrackSummary[]>,
): readonly CountedFilm[] {
  return readAcademyFilms(db, scope, filmedFrom(today)).map((film) => ({
    ...film,
    state: filmState(film, tracks.get(film.studentId) ?? []),
  }));
}

/** Of whom it is recorded in those weeks what they practise: on a drill, or left without one on purpose. */
export function readRecorded({ db, scope, today }: Viewer): {
  readonly drilled: ReadonlySet<string>;
  readonly waiting: ReadonlySet<string>;
} {
  const stretch = { from: filmedFrom(today), to: today };
  return { drilled: readDrilledStudents(db, scope, stretch), waiting: readWaitingStudents(db, scope, stretch) };
}
