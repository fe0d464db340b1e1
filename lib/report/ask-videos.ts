import type { View } from "@/lib/domain/fundamental";
import type { AskSource } from "./build-ask-text";

/** What is read of a film, and from where; null: the academy doesn't know it any more, so it may be from anywhere. */
export interface ReadFromFilm {
  readonly view: View | null;
  readonly swings: number;
}

/**
 * The videos that a family is asked for, each with the most swings that anything is read from in its view. The message and
 * its reminder both ask with it, so that they name the same numbers.
 *
 * @param views of the film, in the order in which they are told
 * @param read at least one; a view of which none is counts as all of them, so that no fewer swings are asked for than are read
 */
export function askVideos(views: readonly View[], read: readonly ReadFromFilm[]): AskSource["videos"] {
  return views.map((view) => {
    const own = read.filter((each) => each.view === view || each.view === null);
    return { view, swings: Math.max(...(own.length === 0 ? read : own).map(({ swings }) => swings)) };
  });
}
