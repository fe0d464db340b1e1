import { changedParts, type DrillDescription, type EarlierDrill, isOffered } from "@/lib/domain/drill-version";
import type { Fundamental } from "@/lib/domain/fundamental";
import type { Words } from "@/lib/words/catalogue";
import { sayDay } from "@/lib/words/day-words";
import { sayDose } from "@/lib/words/say-dose";
import { sayFundamental } from "@/lib/words/say-fundamental";
import { buildChangeHistory } from "./change-history";
import type { HappenPage, HappenPart } from "./happen-model";
import type { Link, TableModel } from "./page-model";

/** A drill of the library with how often it was given. */
export type LibraryEntry = DrillDescription & {
  readonly id: string;
  /** How it was described before, oldest first. */
  readonly before: readonly EarlierDrill[];
  readonly given: number;
};

/** What the page of an academy's drills rests on. */
export interface LibrarySource {
  /** By name. */
  readonly drills: readonly LibraryEntry[];
  /** In the order of work. */
  readonly fundamentals: readonly Fundamental[];
  readonly today: string;
  /** `yes`: whoever reads it may change drills, and sees what each one did. */
  readonly changes: "yes" | "no";
}

/** What the page of one drill of the library rests on. */
export interface LibraryDrillSource extends Omit<LibrarySource, "drills"> {
  readonly drill: LibraryEntry;
}

type Named = Pick<LibrarySource, "fundamentals">;

function sayFor(words: Words, { fundamentals }: Named, id: string): string {
  const found = fundamentals.find((each) => each.id === id);
  return found ? sayFundamental(words, found) : words.say("season.drills.other");
}

/** How a drill is usually given, in one line. */
function sayUsual(words: Words, drill: DrillDescription): string {
  return sayDose(words, { ...drill, stopRule: "" });
}

function sayState(words: Words, { retiredOn }: DrillDescription, today: string): string {
  return retiredOn !== null && !isOffered({ retiredOn }, today)
    ? words.say("library.state.retired", { day: sayDay(words, retiredOn, "day-year") })
    : words.say("library.state.offered");
}

function listTable(words: Words, source: LibrarySource): TableModel {
  const { drills, today, changes } = source;
  return {
    caption: words.say("library.caption"),
    columns: ["drill", "for", "how", "usual", "given", "state"].map((name) => ({
      label: words.say(`library.column.${name}`),
      align: name === "given" ? ("end" as const) : ("start" as const),
    })),
    rows: drills.map((drill) => ({
      cells: [
        drill.name,
        sayFor(words, source, drill.fundamentalId),
        ...[`${drill.how} ${drill.cautions}`.trim(), sayUsual(words, drill)],
        String(drill.given),
        sayState(words, drill, today),
      ],
      tone: isOffered(drill, today) ? ("plain" as const) : ("quiet" as const),
      ...(changes === "yes" ? { href: changeHref(drill.id) } : {}),
    })),
  };
}

/** The academy's drills: what each is for, how it goes, and whether it is offered. */
export function buildLibrary(words: Words, source: LibrarySource): HappenPage {
  const { drills, today, changes } = source;
  const offered = drills.filter((drill) => isOffered(drill, today)).length;
  return {
    title: words.say("library.title", { offered }),
    documentTitle: words.say("document-title", { page: words.say("library") }),
    lede: words.say("library.lede"),
    back:
      changes === "yes"
        ? { href: "/drills", label: words.say("compared.link.open") }
        : { href: "/students", label: words.say("library.back.students") },
    actions: [],
    parts: [
      {
        margin: words.say("library"),
        explains: words.say("library.explains"),
        heading: words.say("library.heading", { drills: drills.length, retired: drills.length - offered }),
        paragraphs: drills.length === 0 ? [words.say("library.none")] : [],
        facts: [],
        table: drills.length === 0 ? null : listTable(words, source),
        open: null,
      },
    ],
    cautions: [words.say("library.caution")],
  };
}

/** The page on which a drill is described anew. */
function changeHref(id: string): string {
  return `/drills/${encodeURIComponent(id)}/change`;
}

/** One part of a description in words; an empty one says so. */
function sayPart(words: Words, source: Named, drill: DrillDescription, part: keyof DrillDescription): string {
  const value = drill[part];
  if (part === "fundamentalId") return sayFor(words, source, drill.fundamentalId);
  if (part === "retiredOn") return words.say(value === null ? "library.was.offered" : "library.was.retired");
  return value === null || value === "" ? words.say("library.was.nothing") : String(value);
}

function historyPart(words: Words, source: LibraryDrillSource): HappenPart {
  const { drill } = source;
  const rows = drill.before.map((was, at) => {
    const parts = changedParts(was, drill.before[at + 1] ?? drill);
    const before = parts.map((part) =>
      words.say("library.was", { part: words.say(`library.part.${part}`), was: sayPart(words, source, was, part) }),
    );
    return [sayDay(words, was.until, "day-year"), before.join(", "), was.why, was.who];
  });
  return buildChangeHistory(words, {
    explains: words.say("library.history.explains"),
    columns: ["until", "was", "why", "who"].map((name) => words.say(`library.history.${name}`)),
    rows,
  });
}

/** One drill of the library as it is described now, with everything that it was called and how it went before. */
export function buildLibraryDrill(words: Words, source: LibraryDrillSource): HappenPage {
  const { drill, today } = source;
  const fact = (name: string, value: string) =>
    value === "" ? [] : [{ name: words.say(`library.column.${name}`), value, note: "" }];
  const seasons: Link = { href: `/drills/${encodeURIComponent(drill.id)}`, label: words.say("library.seasons") };
  return {
    title: words.say("library-drill.title", { drill: drill.name }),
    documentTitle: words.say("document-title", { page: words.say("library-drill") }),
    lede: words.say("library-drill.lede", { given: drill.given }),
    back: { href: "/drills/library", label: words.say("library") },
    actions: [seasons],
    parts: [
      {
        margin: words.say("library-drill.now"),
        explains: "",
        heading: words.say("library-drill.now.heading"),
        paragraphs: [drill.how, drill.cautions].filter((text) => text !== ""),
        facts: [
          ...fact("for", sayFor(words, source, drill.fundamentalId)),
          ...fact("usual", sayUsual(words, drill)),
          ...fact("state", sayState(words, drill, today)),
        ],
        table: null,
        open: null,
      },
      historyPart(words, source),
    ],
    cautions: [words.say("library.caution")],
  };
}
