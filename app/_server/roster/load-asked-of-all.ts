import { readAcademyFilmPlans } from "@/db/read/film-plans";
import { type PlannedFilm, readPlannedFilms } from "@/db/read/planned-films";
import type { FilmPlan } from "@/lib/domain/film-plan";
import { type Fundamental, VIEWS } from "@/lib/domain/fundamental";
import { askedInVain, planAnswers, type SentFilm } from "@/lib/verdict/plan-answers";
import type { Viewer } from "../gate";

/** How often a film of each fundamental was asked for in a row and didn't come, by id. */
export type AskedInVain = ReadonlyMap<string, number>;

const NEVER: AskedInVain = new Map();

function filmOf(film: PlannedFilm, viewOf: ReadonlyMap<string, Fundamental["view"]>): SentFilm {
  const read = (film.fundamentals ?? "").split(",").flatMap((id) => viewOf.get(id) ?? []);
  const named = (film.views ?? "").split(",");
  const views = VIEWS.filter((view) => named.includes(view) || read.includes(view));
  const { clubGroup, day, enteredAt, swings } = film;
  return { clubGroup, day, enteredAt, views, swings };
}

/**
 * How often what a family was asked to film didn't come, of everybody whom the viewer may see at once: what `loadAsked` says of
 * one student.
 */
export function loadAskedOfAll(
  { db, scope }: Pick<Viewer, "db" | "scope">,
  fundamentals: readonly Fundamental[],
): (studentId: string) => AskedInVain {
  const plans = new Map<string, FilmPlan[]>();
  for (const { studentId, ...plan } of readAcademyFilmPlans(db, scope))
    plans.set(studentId, [...(plans.get(studentId) ?? []), plan]);
  if (plans.size === 0) return () => NEVER;
  const viewOf = new Map<string, Fundamental["view"]>(fundamentals.map(({ id, view }) => [id, view]));
  const films = new Map<string, SentFilm[]>();
  for (const film of readPlannedFilms(db, scope))
    films.set(film.studentId, [...(films.get(film.studentId) ?? []), filmOf(film, viewOf)]);
  return (studentId) => {
    const own = plans.get(studentId);
    if (own === undefined) return NEVER;
    return askedInVain(fundamentals, planAnswers(own, films.get(studentId) ?? []));
  };
}
