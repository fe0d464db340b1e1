import { OFFSET_DISTANCE_CM } from "@/lib/capture/camera-limits";
import type { FilmCare } from "@/lib/domain/film-plan";
import type { Fundamental, View } from "@/lib/domain/fundamental";
import type { Hand } from "@/lib/domain/handedness";
import type { Words } from "@/lib/words/catalogue";
import { sayLongDay } from "@/lib/words/day-words";
import { sayNumber } from "@/lib/words/number-words";
import { sayFamilyPart } from "@/lib/words/say-family-part";

/** A message to a family holds at most so many letters (SEASON.md 20), so that it goes out as one. */
export const ASK_LETTERS = 600;

/** A grown-up's big step, cm, as on the card. */
const BIG_STEP_CM = 100;

/** What a family is asked for. */
export interface AskSource {
  readonly kind: "video" | "remind";
  readonly alias: string;
  readonly hand: Hand;
  /** With which clubs, finished: “with the 7-iron”; empty: not said. */
  readonly club: string;
  readonly dueOn: string;
  /** Videos with their swings, in the order in which they are told; empty: what was asked for isn't known any more. */
  readonly videos: readonly { readonly view: View; readonly swings: number }[];
  readonly care: readonly FilmCare[];
  readonly fundamentals: readonly Pick<Fundamental, "id" | "ownName">[];
}

/** The message, and what was left out for its length. */
export interface AskText {
  readonly text: string;
  readonly leftOut: readonly ("care" | "parts")[];
}

function videoLine(words: Words, { videos, club }: AskSource): string[] {
  const [first, second] = videos;
  if (!first) return [];
  const args = { swings: first.swings, club, view: words.say(`ask.view.${first.view}`) };
  const said = second
    ? words.say("ask.two", { ...args, more: second.swings, other: words.say(`ask.view.${second.view}`) })
    : words.say("ask.one", args);
  // Without a club there is a gap where it would stand.
  return [said.replace(/ {2,}/g, " ").replace(/ ,/g, ",")];
}

function placeLines(words: Words, { videos, hand }: AskSource): string[] {
  const args = {
    many: videos.length > 1 ? "yes" : "no",
    steps: sayNumber(words, OFFSET_DISTANCE_CM / BIG_STEP_CM, 0),
    side: words.say(`card.hand.${hand}`),
    other: words.say(`card.hand.${hand === "right" ? "left" : "right"}`),
  };
  return videos.map(({ view }) => words.say(`ask.place.${view}`, args));
}

function partLine(words: Words, parts: readonly string[], all: number): string[] {
  if (parts.length === 0) return [];
  const list = parts.reduce((first, second) => words.say("ask.and", { first, second }));
  return [words.say(parts.length < all ? "ask.parts.more" : "ask.parts", { parts: list })];
}

/**
 * What a family is asked for, as one plain message in its own words; left and right come from the student's hand. Where it
 * would be too long, first what is looked at is shortened, then left out, then the care for the phone, then its place; the
 * day, the swings and the word about pain always stay.
 *
 * @returns at most `ASK_LETTERS` letters, unless the alias alone is longer than any that a form takes
 */
export function buildAskText(words: Words, source: AskSource): AskText {
  const { alias, dueOn, fundamentals, care, hand } = source;
  const head = [words.say(`ask.${source.kind}`, { alias, day: sayLongDay(words, dueOn) }), ...videoLine(words, source)];
  const place = source.kind === "remind" ? [] : placeLines(words, source);
  const cares = source.kind === "remind" ? [] : care.map((each) => words.say(`ask.care.${each}`));
  const parts = source.kind === "remind" ? [] : fundamentals.map((each) => sayFamilyPart(words, each, hand));
  const pain = words.say("ask.pain");
  const join = (...lines: readonly (readonly string[])[]): string => [...head, ...lines.flat(), pain].join(" ");
  const shortened = Array.from({ length: parts.length + 1 }, (_, cut) =>
    partLine(words, parts.slice(0, parts.length - cut), parts.length),
  );
  const tries: readonly AskText[] = [
    ...shortened.map(
      (line): AskText => ({
        text: join(place, cares, line),
        leftOut: parts.length > 0 && line.length === 0 ? ["parts"] : [],
      }),
    ),
    { text: join(place), leftOut: cares.length > 0 ? ["care", "parts"] : ["parts"] },
    { text: join(), leftOut: ["care", "parts"] },
  ];
  return (tries.find(({ text }) => text.length <= ASK_LETTERS) ?? tries.at(-1)) as AskText;
}
