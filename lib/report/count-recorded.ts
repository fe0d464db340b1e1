import type { FilmState } from "./film-state";

/** A film of somebody's, with what came of it. */
export interface RecordedFilm {
  readonly studentId: string;
  readonly state: FilmState;
}

/** What is recorded of some students over the weeks that are counted. */
export interface RecordedCounts {
  /** Students with a film. */
  readonly filmed: number;
  /** Of them those on a drill; those left without one on purpose; those of whom neither is said. The three make up all. */
  readonly drilled: number;
  readonly waiting: number;
  readonly neither: number;
  /** Films, and those of which something counts. */
  readonly films: number;
  readonly counted: number;
}

/**
 * What is recorded of some students who were filmed: a comparison of drills is only as fair as this.
 *
 * @param films of these students alone
 * @param drilled ids of students who were on a drill in those weeks, of whomever
 * @param waiting ids of students who were left without one on purpose
 */
export function countRecorded(
  films: readonly RecordedFilm[],
  drilled: ReadonlySet<string>,
  waiting: ReadonlySet<string>,
): RecordedCounts {
  const filmed = [...new Set(films.map(({ studentId }) => studentId))];
  const onDrill = filmed.filter((id) => drilled.has(id)).length;
  const waits = filmed.filter((id) => !drilled.has(id) && waiting.has(id)).length;
  return {
    filmed: filmed.length,
    drilled: onDrill,
    waiting: waits,
    neither: filmed.length - onDrill - waits,
    films: films.length,
    counted: films.filter(({ state }) => state === "counted").length,
  };
}
