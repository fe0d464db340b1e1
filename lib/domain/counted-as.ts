/**
 * What a student may be counted for on an academy's page: a track that isn't settled, by why; a film of the latest weeks, by
 * what came of it; and, filmed in them, whether it is recorded what is practised. The roster is cut by the same words.
 */
export const COUNTED_AS = [
  ...(["open-alone", "open-not-told-apart", "open-few", "open-plan", "open-no-plan"] as const),
  ...(["film-counted", "film-phone", "film-by-hand", "film-in-lesson", "film-aid-in-view", "film-unread"] as const),
  ...(["filmed-on-a-drill", "filmed-waiting", "filmed-unrecorded"] as const),
] as const;

/** See `COUNTED_AS`. */
export type CountedAs = (typeof COUNTED_AS)[number];
