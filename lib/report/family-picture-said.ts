import { dayFromNumber } from "@/lib/domain/calendar-day";
import type { Words } from "@/lib/words/catalogue";
import { sayStretch } from "@/lib/words/day-words";
import { capital } from "@/lib/words/say-family";
import type { ChartBand, ChartLevel } from "./chart-model";
import type { FamilyPicture } from "./family-look-model";
import { familyMonths, type MonthsTo } from "./family-months";

/** The strip that was in force on a day. */
function bandOn(bands: readonly ChartBand[], day: number): ChartBand | undefined {
  return bands.findLast(({ from }) => from <= day) ?? bands[0];
}

function sayPlace(words: Words, picture: Omit<FamilyPicture, "summary">, level: ChartLevel): string {
  const band = bandOn(picture.bands, level.to);
  if (!band || (band.low === null && band.high === null)) return words.say("family-page.said.none");
  if (band.high !== null && level.low > band.high) return picture.high;
  if (band.low !== null && level.high < band.low) return picture.low;
  const inside = (band.high === null || level.high <= band.high) && (band.low === null || level.low >= band.low);
  return words.say(inside ? "family-page.said.inside" : "family-page.said.edge");
}

function sayDots(words: Words, { sessions, bands, inside }: Omit<FamilyPicture, "summary">): readonly string[] {
  const used = sessions.filter(({ mark }) => mark === "used");
  if (used.length === 0 || inside === "") return [];
  const within = used.filter(({ day, mean }) => {
    const band = bandOn(bands, day);
    return band && (band.low === null || mean >= band.low) && (band.high === null || mean <= band.high);
  });
  return [words.say("family-page.said.dots", { inside: within.length, dots: used.length })];
}

/** A family's picture in one paragraph, from the picture's own model, for who can't see it. */
export function sayFamilyPicture(words: Words, picture: Omit<FamilyPicture, "summary">, to: MonthsTo): string {
  const { heading, sessions, levels, changes } = picture;
  const [first, last] = [sessions[0], sessions.at(-1)];
  const day = (number: number): string => dayFromNumber(number);
  const held = levels.map((level) => ({
    at: level.from,
    said: words.say("family-page.said.level", {
      when: capital(level.label),
      place: sayPlace(words, picture, level),
    }),
  }));
  const changed = changes.map(({ from, to: until, direction, daysLabel }) => ({
    at: from,
    said: words.say("family-page.said.change", {
      word: direction,
      when: capital(
        to.reader === "young"
          ? familyMonths(words, [day(from), day(until)], "or", to)
          : words.say("family-page.said.when", { stretch: daysLabel }),
      ),
    }),
  }));
  return [
    `${heading}.`,
    ...(first && last && to.reader !== "young"
      ? [
          words.say("family-page.said.videos", {
            videos: sessions.length,
            stretch: sayStretch(words, day(first.day), day(last.day)),
          }),
          ...sayDots(words, picture),
        ]
      : []),
    ...[...held, ...changed].sort((a, b) => a.at - b.at).map(({ said }) => said),
  ].join(" ");
}
