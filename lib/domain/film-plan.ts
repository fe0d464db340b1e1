import { z } from "zod";
import type { ClubGroup } from "./club-group";
import { VIEWS } from "./fundamental-shape";

/** What of the camera a film is to be taken care of: square, upright, on the hand line; `any`: the sticks. */
export const FILM_CARES = ["yaw", "roll", "offset", "any"] as const;

/** What of the camera a film is to be taken care of. */
export type FilmCare = (typeof FILM_CARES)[number];

/** Most fundamentals and swings that a kept plan may name: more is no plan for one film. */
export const MOST_PLANNED = { fundamentals: 8, swings: 20 } as const;

const body = z.strictObject({
  /** In the order in which they are read, each with the swings of the film that are read for it. */
  fundamentals: z
    .array(z.strictObject({ id: z.string().min(1).max(80), swings: z.number().int().min(1).max(MOST_PLANNED.swings) }))
    .min(1)
    .max(MOST_PLANNED.fundamentals),
  views: z.array(z.enum(VIEWS)).min(1).max(VIEWS.length),
  care: z.array(z.enum(FILM_CARES)).max(FILM_CARES.length),
});

/** What a film was to show. */
export type FilmPlanBody = Readonly<z.infer<typeof body>>;

/** What the next film of a student is to show, as it was told to the family. */
export interface FilmPlan {
  readonly id: string;
  /** In use; where the one that was told was split or merged since, what it became. */
  readonly clubGroup: ClubGroup;
  /** Groups with which it is answered, where clubs of the told one lie in several now; absent: with its own alone. */
  readonly answeredWith?: readonly ClubGroup[];
  /** The day on which it was told, and the one by which the film is promised, `YYYY-MM-DD`. */
  readonly madeOn: string;
  readonly dueOn: string;
  /** Null: it was brought by an archive and can't be read here; the promise counts all the same. */
  readonly body: FilmPlanBody | null;
  readonly who: string;
  /** ISO instants; null: never reminded, it stands. */
  readonly recordedAt: string;
  readonly remindedAt: string | null;
  readonly voidedAt: string | null;
}

/** A plan's body as it was kept; null: the text is none. */
export function parseFilmPlanBody(text: string): FilmPlanBody | null {
  try {
    const read = body.safeParse(JSON.parse(text));
    return read.success ? read.data : null;
  } catch {
    return null;
  }
}

/**
 * A plan's body as text to keep.
 *
 * @throws Error where it isn't whole
 */
export function filmPlanText(plan: FilmPlanBody): string {
  return JSON.stringify(body.parse(plan));
}

/** The fundamentals that a plan's body as it was kept names; none where the text is no body. */
export function namedInPlan(text: string): readonly string[] {
  return parseFilmPlanBody(text)?.fundamentals.map(({ id }) => id) ?? [];
}

/** The swings that a film is to have: the most that any of its fundamentals is read from. */
export function plannedSwings({ fundamentals }: Pick<FilmPlanBody, "fundamentals">): number {
  return Math.max(...fundamentals.map(({ swings }) => swings));
}
