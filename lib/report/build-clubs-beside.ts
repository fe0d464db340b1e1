import type { TrackVerdict } from "@/lib/domain/track-verdict";
import type { TrackHistory } from "@/lib/verdict/track-history";
import type { Words } from "@/lib/words/catalogue";
import { sayDay } from "@/lib/words/day-words";
import { sayBand, sayLevel, saySure } from "@/lib/words/number-words";
import { sayPosition, saySize } from "@/lib/words/say-verdict";
import type { ClubsBesidePart, DrawnInterval } from "./clubs-beside-model";
import { provedAlone, saidGlyph, saidKey } from "./said";
import { spanOf } from "./span-of";

/** One club group's track of the fundamental. */
export interface BesideTrack {
  readonly clubName: string;
  readonly history: TrackHistory;
  readonly verdict: TrackVerdict;
}

function spanOfAll(tracks: readonly BesideTrack[]): { readonly from: number; readonly to: number } {
  return spanOf(
    tracks.flatMap(({ history: { goal }, verdict: { levelNow } }) => [
      ...(levelNow === null ? [] : [levelNow.low95, levelNow.high95]),
      ...[goal.low, goal.high].flatMap((edge) => (edge === null ? [] : [edge])),
    ]),
  );
}

/** What is said of a track, with its size where something is proved. */
function sayVerdict(words: Words, { history, verdict }: BesideTrack): string {
  const word = words.say(saidKey(verdict));
  if (verdict.change === null || saidGlyph(verdict) === "open") return word;
  return words.say("clubs-beside.proved", { word, size: saySize(words, verdict.change, history.fundamental.unit) });
}

/**
 * One fundamental with each club group, side by side: each judged by its own films against its own band, no number over all.
 *
 * @param tracks in the order of the clubs
 * @param shown the club group whose page it is
 * @returns null with fewer than two club groups
 */
export function buildClubsBeside(words: Words, tracks: readonly BesideTrack[], shown: string): ClubsBesidePart | null {
  if (tracks.length < 2) return null;
  const span = spanOfAll(tracks);
  const column = (key: string, align: "start" | "end" = "start") => ({
    label: words.say(`clubs-beside.${key}`),
    align,
  });
  return {
    margin: words.say("clubs-beside.margin"),
    explains: words.say("clubs-beside.explains"),
    heading: words.say("clubs-beside.heading", {
      groups: tracks.length,
      inside: tracks.filter(({ verdict }) => verdict.position === "inside").length,
    }),
    table: {
      caption: words.say("clubs-beside.caption"),
      columns: [
        column("club"),
        column("level", "end"),
        column("place"),
        column("verdict"),
        column("sure"),
        column("films", "end"),
      ],
      rows: tracks.map((track) => {
        const { history, verdict, clubName } = track;
        const { unit } = history.fundamental;
        const used = history.sessions.filter((entry) => entry.apart === null);
        const last = used.at(-1)?.session.day;
        return {
          ...(history.clubGroup === shown
            ? {}
            : { href: `/students/${history.studentId}/${history.fundamental.id}?club=${history.clubGroup}` }),
          cells: [
            clubName,
            verdict.levelNow === null ? "" : sayLevel(words, verdict.levelNow, unit),
            words.say("clubs-beside.place-of", {
              place: sayPosition(words, verdict.position, verdict.levelNow, history.goal, unit),
              band: sayBand(words, history.goal, unit),
            }),
            sayVerdict(words, track),
            verdict.trend === null
              ? ""
              : words.say("clubs-beside.sure-of", {
                  sure: saySure(words, verdict.evidence.noChange),
                  alone: provedAlone(verdict) === "alone" ? "yes" : "no",
                }),
            words.say("clubs-beside.films-of", {
              films: used.length,
              day: last === undefined ? "" : sayDay(words, last, "short"),
            }),
          ],
          tone: "plain" as const,
        };
      }),
    },
    drawnLabel: words.say("before-after.interval"),
    drawn: tracks.map(({ history, verdict: { levelNow, position } }): DrawnInterval | null =>
      levelNow === null
        ? null
        : {
            ...span,
            bandLow: history.goal.low,
            bandHigh: history.goal.high,
            low: levelNow.low95,
            value: levelNow.estimate,
            high: levelNow.high95,
            sentence: sayPosition(words, position, levelNow, history.goal, history.fundamental.unit),
          },
    ),
  };
}
