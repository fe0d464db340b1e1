import { SMALL_GROUP } from "@/lib/domain/small-group";
import type { Words } from "@/lib/words/catalogue";
import { sayNumber } from "@/lib/words/number-words";
import type { AcademySource } from "./academy-source";
import type { Fact, Link } from "./basic-model";
import { provedMonths } from "./proved-months";
import { saidGlyph } from "./said";
import type { TrackSummary } from "./track-summary";

/** A sheet of an academy's counts for whoever answers for it: nothing in it is about one student. */
export interface BoardSheet {
  readonly documentTitle: string;
  readonly back: Link;
  readonly title: string;
  readonly lede: string;
  /** What stands beside the counts, and beside how they are to be read. */
  readonly margin: string;
  readonly reading: string;
  /** Empty: there are too few students to count anything. */
  readonly facts: readonly Fact[];
  readonly lines: readonly string[];
}

/** A number of students: none, so many, or that they are fewer than may be told. */
function sayStudents(words: Words, students: number): string {
  return words.say(students > 0 && students < SMALL_GROUP ? "board.few" : "board.students", {
    students,
    least: SMALL_GROUP,
  });
}

function studentsWith(tracks: readonly TrackSummary[], is: (track: TrackSummary) => boolean): number {
  return new Set(tracks.filter(is).map(({ studentId }) => studentId)).size;
}

const proves = (verdict: "gain" | "slip") => (track: TrackSummary) =>
  provedMonths([track]).some((proved) => proved.verdict === verdict);

/**
 * The board sheet: counts over everybody, by students and not by what was measured of them, so that a count under five hides under
 * its own words; no name, age, club, group or day.
 */
export function buildBoard(words: Words, source: AcademySource): BoardSheet {
  const { groups, students, tracks, films } = source;
  const page = {
    documentTitle: words.say("document-title", { page: words.say("board") }),
    back: { href: "/academy", label: words.say("academy") },
    ...{ margin: words.say("board.margin"), reading: words.say("board.margin.reading") },
  };
  if (groups === null)
    return { ...page, title: words.say("academy.few"), lede: words.say("board.few.text"), facts: [], lines: [] };
  const share = (part: number, all: number): string =>
    sayNumber(words, all === 0 ? 0 : Math.round((100 * part) / all), 0);
  const open = tracks.filter(({ verdict }) => saidGlyph(verdict) === "open").length;
  const counted = films.filter((state) => state === "counted").length;
  const filmed = new Set(tracks.map(({ studentId }) => studentId)).size;
  const fact = (name: string, value: string) => ({
    name: words.say(`board.${name}`),
    value,
    note: words.say(`board.${name}.note`),
  });
  return {
    ...page,
    title: words.say("board.title"),
    lede: words.say("board.lede"),
    facts: [
      fact("here", sayStudents(words, students)),
      fact("filmed", sayStudents(words, filmed)),
      fact("gain", sayStudents(words, studentsWith(tracks, proves("gain")))),
      fact("slip", sayStudents(words, studentsWith(tracks, proves("slip")))),
      fact("open", words.say("board.of-100", { share: share(open, tracks.length) })),
      fact("films", words.say("board.of-100", { share: share(counted, films.length) })),
    ],
    lines: [words.say("board.honest"), words.say("board.no-ranking"), words.say("board.care")],
  };
}
