import { SMALL_GROUP } from "@/lib/domain/small-group";
import type { Words } from "@/lib/words/catalogue";
import { sayDay } from "@/lib/words/day-words";
import { halfWidth, sayLimit } from "@/lib/words/number-words";
import { sayFundamental } from "@/lib/words/say-fundamental";
import type { AcademyPart } from "./academy-model";
import { rosterOf } from "./academy-source";
import { countPlaces } from "./count-places";
import { groupFilter } from "./group-filter";
import { beyondBand, middleOf, spreadAxis } from "./spread-axis";
import { type PlacedTrack, placedTracks, sayAxis, spreadChart } from "./spread-chart";
import { groupsPart } from "./spread-groups";
import { helpedPart } from "./spread-helped";
import type { SpreadPage } from "./spread-model";
import { movedPart } from "./spread-moved";
import { type SpreadSource, spreadHref } from "./spread-source";

/** Where a level may lie, work first. */
const PLACES = ["outside", "edge", "inside"] as const;

type Levels = NonNullable<SpreadPage["counted"]>["levels"];

function whereTable(words: Words, source: SpreadSource, places: ReturnType<typeof countPlaces>): AcademyPart["table"] {
  if (PLACES.every((place) => places[place] === 0)) return null;
  return {
    caption: words.say("spread.where.caption"),
    columns: [
      { label: words.say("spread.where.place"), align: "start" },
      { label: words.say("spread.where.levels"), align: "end" },
    ],
    rows: PLACES.map((place) => ({
      cells: [words.say(`spread.where.${place}`), String(places[place])],
      ways: [null, places[place] === 0 ? null : rosterOf(source, { fundamental: source.fundamental.id, place })],
      tone: places[place] === 0 ? ("quiet" as const) : ("plain" as const),
    })),
  };
}

function levelsPart(words: Words, source: SpreadSource, placed: readonly PlacedTrack[]): Levels {
  const { fundamental, tracks } = source;
  const places = countPlaces(tracks);
  const outside = placed.filter(({ place }) => place === "outside");
  const below = outside.filter((each) => beyondBand(each) < 0).length;
  const usual = placed.length === 0 ? null : middleOf(placed.map(({ interval }) => halfWidth(interval)));
  const without = tracks.length - placed.length;
  return {
    margin: words.say("spread.margin.levels"),
    explains: words.say("spread.explains.levels"),
    heading: words.say("spread.levels.heading", {
      ...{ outside: outside.length, below, above: outside.length - below, edge: places.edge },
      bare: placed.some(({ place }) => place !== "none") ? "no" : "yes",
    }),
    texts: [
      ...(usual === null ? [] : [words.say("spread.known", { half: sayLimit(words, usual, fundamental.unit) })]),
      ...(placed.length === 0 ? [] : [sayAxis(words, source, spreadAxis(placed))]),
      ...(without === 0 ? [] : [words.say("spread.without", { without })]),
    ],
    chart: spreadChart(words, source, placed),
    table: whereTable(words, source, places),
    links: [],
  };
}

/** The title of its document: no name of a fundamental stands in it. */
export function spreadTitle(words: Words): string {
  return words.say("document-title", { page: words.say("spread.document") });
}

/** Where the students of an academy stand in one fundamental against their own bands, what was proved of it, and what helped. */
export function buildSpread(words: Words, source: SpreadSource): SpreadPage {
  const { fundamental, groups, group, tracks, here } = source;
  const name = sayFundamental(words, fundamental);
  const head = { documentTitle: spreadTitle(words), back: { href: "/academy", label: words.say("academy") } };
  if (groups === null)
    return {
      ...head,
      title: here < SMALL_GROUP ? words.say("academy.few") : words.say("spread.few", { name }),
      lede: words.say("academy.few.text"),
      counted: null,
    };
  const placed = placedTracks(tracks);
  const { inside, edge, outside } = countPlaces(tracks);
  const students = new Set(placed.map(({ track }) => track.studentId)).size;
  return {
    ...head,
    title: words.say("spread.title", { name, inside, outside, all: inside + edge + outside }),
    lede: words.say("spread.lede", { levels: placed.length, students, from: sayDay(words, source.from, "day-year") }),
    counted: {
      filter: groupFilter(words, {
        ...{ action: spreadHref(fundamental.id), kept: [], groups, group, note: "" },
        state: words.say("spread.state", {
          students,
          group: group === null ? "all" : "some",
          name: group?.label ?? "",
        }),
      }),
      levels: levelsPart(words, source, placed),
      moved: movedPart(words, source),
      groups: groupsPart(words, source),
      helped: helpedPart(words, source),
    },
  };
}
