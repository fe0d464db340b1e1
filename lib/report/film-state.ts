import type { Circumstance } from "@/lib/domain/session";
import type { TrackSummary } from "./track-summary";

/** What came of a film, the usual first: `phone` is one that the camera's place, or the film's fundamentals together, put aside. */
export const FILM_STATES = ["counted", "phone", "by-hand", "in-lesson", "aid-in-view", "unread"] as const;

/** What came of a film. */
export type FilmState = (typeof FILM_STATES)[number];

/** A film as far as it is counted. */
export interface FilmFactsOfDay {
  readonly day: string;
  readonly clubGroup: string;
  readonly circumstance: Circumstance;
  /** Whether somebody set it, or a view of it, aside by hand. */
  readonly aside: "yes" | "no";
}

/**
 * What came of a film: it counts where anything of it does.
 *
 * @param tracks of its student, in any order
 */
export function filmState(film: FilmFactsOfDay, tracks: readonly TrackSummary[]): FilmState {
  const marks = tracks.flatMap(({ clubGroup, sessions }) =>
    clubGroup === film.clubGroup ? sessions.filter(({ date }) => date === film.day).map(({ mark }) => mark) : [],
  );
  if (film.circumstance !== "unaided") return film.circumstance;
  if (marks.includes("used")) return "counted";
  if (film.aside === "yes") return "by-hand";
  return marks.length === 0 ? "unread" : "phone";
}
