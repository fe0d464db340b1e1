import type { RosterView } from "@/lib/domain/roster-view";
import type { Words } from "@/lib/words/catalogue";
import { sayDay } from "@/lib/words/day-words";
import type { AcademyPart } from "./academy-model";
import { rosterOf } from "./academy-source";
import { monthsShown } from "./build-academy-months";
import { type ProvedOfTrack, provedOfTracks } from "./proved-months";
import { saidGlyph } from "./said";
import type { SpreadSource } from "./spread-source";

/** What is said of a track, proofs first. */
const SAID = ["gain", "slip", "moved", "steady", "open"] as const satisfies readonly RosterView["verdict"][];

/** Gains and slips of the season that stand or stood on the roster's list, as the academy's page counts them. */
export function provedThisSeason({ tracks, from, today }: SpreadSource): readonly ProvedOfTrack[] {
  const months = monthsShown(from, today);
  return provedOfTracks(tracks).filter(({ month }) => months.includes(month));
}

/** What was proved of a fundamental since the season's start, and what is said of each track today. */
export function movedPart(words: Words, source: SpreadSource): AcademyPart {
  const { tracks, fundamental } = source;
  const proved = provedThisSeason(source);
  const gains = proved.filter(({ verdict }) => verdict === "gain").length;
  const rows = SAID.map((said) => ({
    said,
    count: tracks.filter(({ verdict }) => saidGlyph(verdict) === said).length,
  }));
  return {
    margin: words.say("spread.margin.moved"),
    explains: words.say("spread.explains.moved"),
    heading: words.say("spread.moved.heading", {
      ...{ gains, slips: proved.length - gains, from: sayDay(words, source.from, "day-year") },
    }),
    table: {
      caption: words.say("spread.moved.caption"),
      columns: [
        { label: words.say("spread.moved.said"), align: "start" },
        { label: words.say("spread.moved.tracks"), align: "end" },
      ],
      rows: rows.map(({ said, count }) => ({
        cells: [words.say(`verdict.${said}`), String(count)],
        ways: [null, count === 0 ? null : rosterOf(source, { fundamental: fundamental.id, verdict: said })],
        tone: count === 0 ? ("quiet" as const) : ("plain" as const),
      })),
    },
    links: [],
  };
}
