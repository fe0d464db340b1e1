import type { Words } from "./catalogue";

/** Where it hurts: a word of the list, or the family's own. */
export function sayPlace(words: Words, place: string): string {
  const key = `happen.place.${place}`;
  return words.has(key) ? words.say(key) : place;
}
