import type { CountedAs } from "@/lib/domain/counted-as";
import { SMALL_GROUP } from "@/lib/domain/small-group";
import type { Position } from "@/lib/domain/track-verdict";
import { POLICY } from "@/lib/verdict/policy";
import type { Words } from "@/lib/words/catalogue";
import { sayDay } from "@/lib/words/day-words";
import { sayFundamental } from "@/lib/words/say-fundamental";
import type { AcademyPage, AcademyPart } from "./academy-model";
import { type AcademySource, rosterOf } from "./academy-source";
import type { TableModel } from "./basic-model";
import { buildMonths } from "./build-academy-months";
import { countPlaces } from "./count-places";
import type { RecordedCounts } from "./count-recorded";
import { FILM_STATES } from "./film-state";
import { groupFilter } from "./group-filter";
import { OPEN_WHYS, openWhy } from "./open-why";
import { saidGlyph } from "./said";
import { spreadHref } from "./spread-source";

const columns = (words: Words, of: string, names: readonly string[]): TableModel["columns"] =>
  names.map((name, at) => ({
    label: words.say(`academy.${of}.${name}`),
    align: at === 0 ? ("start" as const) : ("end" as const),
  }));

function part(
  words: Words,
  of: string,
  said: Readonly<Record<string, string | number>>,
): Omit<AcademyPart, "table" | "links"> {
  return {
    margin: words.say(`academy.margin.${of}`),
    explains: words.say(`academy.explains.${of}`, said),
    heading: words.say(`academy.${of}.heading`, said),
  };
}

function stalledPart(words: Words, source: AcademySource): AcademyPart {
  const { stalled, weeks } = source;
  return {
    ...part(words, "stalled", { stalled, weeks: weeks.stalled }),
    table: null,
    links:
      stalled === 0 ? [] : [{ href: rosterOf(source, { show: "stalled" }), label: words.say("academy.stalled.go") }],
  };
}

function openPart(words: Words, source: AcademySource): AcademyPart {
  const open = source.tracks.filter(({ verdict }) => saidGlyph(verdict) === "open");
  const rows = OPEN_WHYS.flatMap((why) => {
    const count = open.filter(({ verdict }) => openWhy(verdict) === why).length;
    const ways = [null, rosterOf(source, { counted: `open-${why}` })];
    return count === 0
      ? []
      : [{ cells: [words.say(`academy.open.${why}`), String(count)], tone: "plain" as const, ways }];
  });
  return {
    ...part(words, "open", { open: open.length, tracks: source.tracks.length }),
    table:
      rows.length === 0
        ? null
        : { caption: words.say("academy.open.caption"), columns: columns(words, "open", ["why", "tracks"]), rows },
    links:
      open.length === 0 ? [] : [{ href: rosterOf(source, { verdict: "open" }), label: words.say("academy.open.go") }],
  };
}

function filmsPart(words: Words, source: AcademySource): AcademyPart {
  const { films, weeks } = source;
  const counted = films.filter((state) => state === "counted").length;
  const rows = FILM_STATES.flatMap((state) => {
    const count = films.filter((each) => each === state).length;
    const ways = [null, rosterOf(source, { counted: `film-${state}` })];
    const cells = [words.say(`academy.films.${state}`), String(count)];
    return count === 0 ? [] : [{ cells, tone: "plain" as const, ways }];
  });
  return {
    ...part(words, "films", { films: films.length, counted, weeks: weeks.films }),
    table:
      rows.length === 0
        ? null
        : { caption: words.say("academy.films.caption"), columns: columns(words, "films", ["what", "films"]), rows },
    links: [],
  };
}

/** What is counted of whoever was filmed, and how the roster is cut to it; null: the row's own way leads to it. */
const RECORDED: readonly (readonly [keyof RecordedCounts, CountedAs | null])[] = [
  ["filmed", null],
  ["drilled", "filmed-on-a-drill"],
  ["waiting", "filmed-waiting"],
  ["neither", "filmed-unrecorded"],
  ["films", null],
  ["counted", "film-counted"],
];

/** What is recorded of whoever was filmed, and how many films counted, by coach in the order of names: nobody is ranked. */
function recordedPart(words: Words, source: AcademySource): AcademyPart | null {
  const [whole] = source.recorded;
  if (whole === undefined || whole.counts.filmed === 0) return null;
  return {
    ...part(words, "recorded", { ...whole.counts, weeks: source.weeks.films }),
    table: {
      caption: words.say("academy.recorded.caption"),
      columns: columns(words, "recorded", ["who", "filmed", "drilled", "waiting", "neither", "films", "counted"]),
      rows: source.recorded
        .filter(({ counts }) => counts.filmed > 0)
        .map(({ group, counts }) => ({
          cells: [group?.label ?? words.say("academy.recorded.all"), ...RECORDED.map(([of]) => String(counts[of]))],
          tone: "plain" as const,
          href: rosterOf({ group }, {}),
          ways: [
            null,
            ...RECORDED.map(([of, counted]) =>
              counted === null || counts[of] === 0 ? null : rosterOf({ group }, { counted }),
            ),
          ],
        })),
    },
    links: [],
  };
}

function levelsPart(words: Words, source: AcademySource): AcademyPart {
  const places = source.fundamentals.flatMap((fundamental) => {
    const own = source.tracks.filter(({ fundamentalId }) => fundamentalId === fundamental.id);
    const { inside, edge, outside } = countPlaces(own);
    // Of fewer than five students nothing is counted by itself, nor where as few would be left of everybody's row.
    const few = new Set(own.map(({ studentId }) => studentId)).size < SMALL_GROUP;
    const fewLeft = (source.leftOut.get(fundamental.id) ?? SMALL_GROUP) < SMALL_GROUP;
    if (few || fewLeft || inside + edge + outside === 0) return [];
    const way = (count: number, place: Position): string | null =>
      count === 0 ? null : rosterOf(source, { fundamental: fundamental.id, place });
    return [{ fundamental, inside, edge, outside, way }];
  });
  const most = places.toSorted((a, b) => b.outside - a.outside)[0];
  return {
    ...part(words, "levels", {
      outside: most?.outside ?? 0,
      name: most === undefined ? "" : sayFundamental(words, most.fundamental),
      all: most === undefined ? 0 : most.inside + most.edge + most.outside,
    }),
    table:
      places.length === 0
        ? null
        : {
            caption: words.say("academy.levels.caption"),
            columns: columns(words, "levels", ["fundamental", "inside", "edge", "outside"]),
            rows: places.map(({ fundamental, inside, edge, outside, way }) => ({
              cells: [sayFundamental(words, fundamental), String(inside), String(edge), String(outside)],
              tone: "plain" as const,
              href: spreadHref(fundamental.id, source.group),
              ways: [null, way(inside, "inside"), way(edge, "edge"), way(outside, "outside")],
            })),
          },
    links: [],
  };
}

/** The title of its document: nothing has to be counted for it. */
export function academyTitle(words: Words): string {
  return words.say("document-title", { page: words.say("academy") });
}

/** How an academy, or a group of it, gets on: what was proved, who waits for a proof, what is open and what was filmed, in counts. */
export function buildAcademyPage(words: Words, source: AcademySource): AcademyPage {
  const { groups, group, students } = source;
  const documentTitle = academyTitle(words);
  const whose = { students, group: group === null ? "all" : "some", name: group?.label ?? "" };
  const ways = [
    { href: "/drills", label: words.say("compared.link.open") },
    { href: "/rereads", label: words.say("academy.readers") },
    { href: "/academy/board", label: words.say("board.link") },
  ];
  if (groups === null)
    return {
      documentTitle,
      ways,
      title: words.say("academy.few"),
      lede: words.say("academy.few.text"),
      counted: null,
    };
  const proved = buildMonths(words, source);
  return {
    documentTitle,
    ways,
    title: words.say("academy.title", { gains: proved.gains, slips: proved.slips }),
    lede: words.say("academy.lede", { from: sayDay(words, source.from, "day-year") }),
    counted: {
      filter: groupFilter(words, {
        ...{ action: "/academy", kept: [], groups, group, note: "" },
        state: words.say("academy.state", whose),
      }),
      proved: { ...part(words, "proved", { gains: proved.gains, slips: proved.slips }), ...proved.shown },
      stalled: stalledPart(words, source),
      levels: levelsPart(words, source),
      open: openPart(words, source),
      films: filmsPart(words, source),
      recorded: recordedPart(words, source),
      method: {
        margin: words.say("compared.margin.method"),
        heading: words.say("compared.method.heading"),
        text: words.say("academy.method", {
          share: Math.round(100 * POLICY.listShare),
          weeks: source.weeks.films,
          least: SMALL_GROUP,
        }),
      },
    },
  };
}
