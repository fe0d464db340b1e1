import type { Priority, WorkStop } from "@/lib/verdict/choose-priority";
import type { Words } from "@/lib/words/catalogue";
import { sayDay } from "@/lib/words/day-words";
import { sayFundamental } from "@/lib/words/say-fundamental";
import type { WorkTrack } from "./order-of-work";

/** What stops the work: pain, or a pause of which only the days are told. */
export function sayStop(words: Words, { kind, since, until }: WorkStop): string {
  return words.say(`work.stop.${kind}`, {
    since: sayDay(words, since, "short"),
    until: until === null ? "" : sayDay(words, until, "short"),
    hasEnd: until === null ? "no" : "yes",
  });
}

/** Names of fundamentals, two at most and how many more. */
export function sayNames(words: Words, items: readonly Pick<WorkTrack, "fundamental">[]): string {
  const names = items.slice(0, 2).map(({ fundamental }) => sayFundamental(words, fundamental));
  return words.say("work.names", {
    first: names[0] ?? "",
    second: names[1] ?? "",
    named: names.length,
    more: items.length - names.length,
  });
}

/** Every name of a list. */
export function sayEveryName(words: Words, items: readonly Pick<WorkTrack, "fundamental">[]): string {
  return items.map(({ fundamental }) => sayFundamental(words, fundamental)).join(", ");
}

/** What a list adds to the one in hand: what stops it, that the coach chose it, or what is measured first; empty: nothing. */
export function sayWorkNote(words: Words, { stop, inHand }: Priority<WorkTrack>): string {
  if (stop !== null) return sayStop(words, stop);
  if (inHand === null) return "";
  return [
    inHand.reason === "chosen" ? words.say("work.note.chosen") : "",
    inHand.blocks.length === 0 ? "" : words.say("work.note.first", { first: inHand.blocks.length }),
  ]
    .filter((text) => text !== "")
    .join(" ");
}
