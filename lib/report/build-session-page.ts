import { VIEWS, type View } from "@/lib/domain/fundamental";
import type { Session } from "@/lib/domain/session";
import type { EnteredCapture } from "@/lib/domain/session-entry";
import type { Words } from "@/lib/words/catalogue";
import { sayDay } from "@/lib/words/day-words";
import { sayNumber } from "@/lib/words/number-words";
import { sayClubGroup } from "@/lib/words/say-club";
import { sayFundamental } from "@/lib/words/say-fundamental";
import type { Fact, TableModel } from "./basic-model";
import { type HistoryEntry, type HistorySource, historyTable, undoPresses } from "./build-history";
import { emptyPart, type RecordPage, type RecordPart } from "./record-page-model";

/** Everything that the page of one session rests on. */
export interface SessionPageSource extends HistorySource {
  readonly session: Session;
  readonly films: readonly EnteredCapture[];
  readonly swings: readonly number[];
  /** First readings of the session's reader. */
  readonly readings: readonly {
    readonly swing: number;
    readonly fundamentalId: string;
    readonly value: number | null;
    readonly typed: string;
    readonly state: "counts" | "void";
    /** 0: never corrected. */
    readonly correctionId: number;
  }[];
  readonly entries: readonly HistoryEntry[];
}

/**
 * Views without a film. Where no film is on file at all nobody spoke of films (an import may bring none), and where values
 * were read there was one.
 */
function viewsWithout({ films, readings, fundamentals }: SessionPageSource): readonly View[] {
  const read = new Set(readings.map((reading) => reading.fundamentalId));
  return VIEWS.filter(
    (view) =>
      films.length > 0 &&
      films.every((film) => film.view !== view) &&
      fundamentals.every((each) => each.view !== view || !read.has(each.id)),
  );
}

function factList(words: Words, source: SessionPageSource): readonly Fact[] {
  const { session, grouping } = source;
  const group = sayClubGroup(words, grouping, session.clubGroup);
  const list: Fact[] = [];
  const add = (key: string, value: string, note = ""): void => {
    if (value !== "") list.push({ name: words.say(`session-page.fact.${key}`), value, note });
  };
  add("day", sayDay(words, session.day, "full"));
  add("club", session.club ?? group, session.club === null ? "" : group);
  add("circumstance", words.say(`circumstance.${session.circumstance}`), session.aid ?? "");
  add("reader", session.reader);
  add(
    "not-filmed",
    viewsWithout(source)
      .map((view) => words.say(`view.${view}`))
      .join(", "),
  );
  if (session.solid !== null && session.balls !== null)
    add("contact", words.say("contact.solid", { solid: session.solid, balls: session.balls }));
  if (session.daysSincePractice !== null)
    add("practice", words.say("session-page.days", { days: session.daysSincePractice }));
  add("note", session.note ?? "");
  add("set-aside", session.setAsideReason ?? "");
  return list;
}

function sayStood(words: Words, film: EnteredCapture): string {
  if (film.squareness !== "off" || film.offBy === null) return words.say(`squareness.${film.squareness}`);
  const by = sayNumber(words, film.offBy, Number.isInteger(film.offBy) ? 0 : 1);
  return words.say("session-page.off-by", { by, unit: film.view === "face-on" ? "degrees" : "cm" });
}

function filmTable(words: Words, films: readonly EnteredCapture[]): TableModel {
  return {
    caption: words.say("session-page.films.caption"),
    columns: ["view", "placement", "square", "seen", "by", "film", "aside"].map((name) => ({
      label: words.say(`session-page.films.${name}`),
      align: "start",
    })),
    rows: films.map((film) => ({
      cells: [
        words.say(`view.${film.view}`),
        [words.say(`placement.${film.placement}`), film.placementLabel ?? ""].filter((text) => text !== "").join(", "),
        sayStood(words, film),
        words.say("session-page.films.seen-count", {
          seen: Object.values(film.seen).filter((value) => value !== null).length,
        }),
        film.placedBy ?? "",
        film.filmReference ?? "",
        film.setAsideReason ?? "",
      ],
      tone: film.setAsideReason === null ? "plain" : "quiet",
    })),
  };
}

/** What stands in a cell: the value in force, what was typed where that reads otherwise, and what was done to it. */
function sayCell(words: Words, reading: SessionPageSource["readings"][number] | undefined): string {
  if (!reading) return "";
  const value =
    reading.value === null
      ? words.say("session-page.not-measurable")
      : sayNumber(words, reading.value, Number.isInteger(reading.value) ? 0 : 1);
  const state = reading.state === "void" ? "void" : reading.correctionId === 0 ? "plain" : "corrected";
  const plain = reading.typed.replace(",", ".").replace("−", "-").trim();
  const same = reading.value === null || reading.state === "void" || Number(plain) === reading.value;
  return words.say("session-page.cell", { value, state, typed: reading.typed, same: same ? "yes" : "no" });
}

function readingTable(words: Words, source: SessionPageSource): TableModel {
  const read = new Set(source.readings.map((reading) => reading.fundamentalId));
  const columns = source.fundamentals.filter((fundamental) => read.has(fundamental.id));
  return {
    caption: words.say("session-page.readings.caption"),
    columns: [
      { label: words.say("session-form.swing"), align: "start" },
      ...columns.map((fundamental) => ({
        label: words.say("session-page.column", {
          name: sayFundamental(words, fundamental),
          unit: words.say(`unit.${fundamental.unit}.name`),
        }),
        align: "end" as const,
      })),
    ],
    rows: source.swings.map((number) => ({
      cells: [
        words.say("session-form.swing-number", { number }),
        ...columns.map((fundamental) =>
          sayCell(
            words,
            source.readings.find((each) => each.swing === number && each.fundamentalId === fundamental.id),
          ),
        ),
      ],
      tone: "plain",
    })),
  };
}

function historyParts(words: Words, source: SessionPageSource): readonly RecordPart[] {
  const { entries } = source;
  if (entries.length === 0) return [];
  return [
    {
      ...emptyPart(words.say("history.part"), words.say("history.heading", { changes: entries.length })),
      tables: [historyTable(words, entries, source)],
      presses: undoPresses(words, entries, source),
    },
  ];
}

/** One session as it is on file: its facts, its films, its readings, what was corrected, and the ways to correct it. */
export function buildSessionPage(words: Words, source: SessionPageSource, told: string): RecordPage {
  const { student, session, readings, swings } = source;
  const here = `/students/${student.id}/sessions/${session.id}`;
  const counting = readings.filter((reading) => reading.state === "counts").length;
  return {
    title: words.say("session-page.title", { alias: student.alias, day: sayDay(words, session.day, "full") }),
    documentTitle: words.say("document-title", { page: words.say("session-page.document-title") }),
    lede: words.say("session-page.lede", { swings: swings.length, readings: counting, reader: session.reader }),
    back: { href: `/students/${student.id}`, label: words.say("fundamental-page.back", { alias: student.alias }) },
    notices: told === "" ? [] : [told],
    ask: null,
    parts: [
      {
        ...emptyPart(
          words.say("session-page.part.readings"),
          words.say("session-page.readings", { readings: counting }),
        ),
        explains: words.say("session-page.part.readings.explains"),
        tables: [readingTable(words, source)],
        links: [{ href: `${here}/correct`, label: words.say("session-page.correct") }],
      },
      {
        ...emptyPart(words.say("session-page.part.facts"), words.say("session-page.facts")),
        facts: factList(words, source),
        tables: source.films.length === 0 ? [] : [filmTable(words, source.films)],
        links: [
          { href: `${here}/facts`, label: words.say("session-page.correct-facts") },
          { href: `${here}/aside`, label: words.say("aside.link") },
          ...(session.note === null ? [] : [{ href: `${here}/note`, label: words.say("session-page.note") }]),
          { href: `${here}/move`, label: words.say("session-page.move") },
          ...(swings.length > 1 ? [{ href: `${here}/split`, label: words.say("session-page.split") }] : []),
        ],
      },
      ...historyParts(words, source),
      {
        ...emptyPart(words.say("session-page.part.more"), words.say("session-page.more")),
        links: [
          { href: `/students/${student.id}/history`, label: words.say("session-page.history") },
          { href: `/students/${student.id}/known`, label: words.say("history.known") },
        ],
      },
    ],
  };
}
