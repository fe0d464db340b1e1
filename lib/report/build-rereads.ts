import type { Fundamental } from "@/lib/domain/fundamental";
import type { MeasuredReaderError, RereadDraw } from "@/lib/domain/reread";
import type { TypicalError } from "@/lib/stats/typical-error";
import type { LevelError, ReaderError } from "@/lib/verdict/reader-error";
import { READER_ERROR_THRESHOLDS } from "@/lib/verdict/reader-error-thresholds";
import type { Words } from "@/lib/words/catalogue";
import { sayDay } from "@/lib/words/day-words";
import { sayFundamental } from "@/lib/words/say-fundamental";
import { sayDifference, sayReadingSd, sayTypicalError } from "@/lib/words/say-reading";
import type { TableModel } from "./basic-model";
import type { RereadsPage } from "./reread-model";

/** What is known of the reading of one fundamental. */
export interface ReadFundamental {
  readonly fundamental: Fundamental;
  readonly error: ReaderError;
  /** Oldest first. */
  readonly fits: readonly MeasuredReaderError[];
}

const CELL = { tone: "plain" } as const;

/** The pairs that are still missing before the customary figure goes. */
export function missingPairs(pairs: number): number {
  return Math.max(0, READER_ERROR_THRESHOLDS.pairsNeeded.value - pairs);
}

/** By which figure films of now and later are judged. */
export function sayJudgedWith(words: Words, { fundamental, error, fits }: ReadFundamental): string {
  const fit = fits.at(-1);
  if (fit === undefined)
    return words.say("reread.judged.customary", {
      sd: sayReadingSd(words, fundamental.readerSd, fundamental.unit),
      missing: missingPairs(error.sameFilm.pairs),
    });
  return words.say(missingPairs(fit.pairs) === 0 ? "reread.judged.measured" : "reread.judged.offset-only", {
    sd: sayReadingSd(words, fit.readerSd, fundamental.unit),
    day: sayDay(words, fit.fromDay, "day-year"),
  });
}

/** The bias and the typical error of one row, each with its 95 of 100. */
export function errorCells(words: Words, outcome: LevelError["pooled"], unit: Fundamental["unit"]): [string, string] {
  const none = words.say("reread.none");
  if (outcome.kind !== "ok") return [none, none];
  const { bias }: TypicalError = outcome.value;
  const said = bias.kind === "ok" ? sayDifference(words, { ...bias.value, value: bias.value.difference }, unit) : none;
  return [said, sayTypicalError(words, outcome.value, unit)];
}

function column(words: Words, key: string, align: "start" | "end" = "start") {
  return { label: words.say(key), align };
}

function drawsTable(words: Words, draws: readonly RereadDraw[]): RereadsPage["draws"] {
  if (draws.length === 0) return null;
  return {
    margin: words.say("reread.margin.draws"),
    explains: words.say("reread.explains.draws"),
    heading: words.say("reread.draws.heading", { open: draws.filter((draw) => draw.finishedOn === null).length }),
    table: {
      caption: words.say("reread.draws.caption"),
      columns: ["day", "reader", "level", "read", "state"].map((name) => column(words, `reread.draws.${name}`)),
      rows: draws.map((draw) => ({
        ...CELL,
        cells: [
          sayDay(words, draw.day, "day-year"),
          draw.reader,
          words.say(`reread.level.${draw.level}`),
          words.say("reread.draws.of", { read: draw.read, items: draw.items }),
          draw.finishedOn === null
            ? words.say("reread.draws.open")
            : words.say("reread.draws.finished", { day: sayDay(words, draw.finishedOn, "day-year") }),
        ],
      })),
    },
    linkLabel: words.say("reread.draws.go"),
    links: draws.map((draw) => ({
      href: `/rereads/${draw.id}`,
      label: words.say(draw.finishedOn === null ? "reread.draws.continue" : "reread.draws.see"),
    })),
  };
}

function measuredTable(words: Words, read: readonly ReadFundamental[]): TableModel {
  return {
    caption: words.say("reread.measured.caption"),
    columns: [
      column(words, "reread.measured.fundamental"),
      column(words, "reread.measured.pairs", "end"),
      column(words, "reread.measured.bias", "end"),
      column(words, "reread.measured.typical", "end"),
      column(words, "reread.measured.judged"),
    ],
    rows: read.map((one) => ({
      ...CELL,
      cells: [
        sayFundamental(words, one.fundamental),
        String(one.error.sameFilm.pairs),
        ...errorCells(words, one.error.sameFilm.pooled, one.fundamental.unit),
        sayJudgedWith(words, one),
      ],
    })),
  };
}

function readersPart(words: Words, read: readonly ReadFundamental[]): RereadsPage["readers"] {
  const rows = read.flatMap(({ fundamental, error }) =>
    error.sameFilm.readers.map((own) => ({
      ...CELL,
      reader: own.reader,
      cells: [
        sayFundamental(words, fundamental),
        own.reader,
        String(own.pairs),
        ...errorCells(words, own.error, fundamental.unit),
        own.shrunken === null ? words.say("reread.none") : sayReadingSd(words, own.shrunken, fundamental.unit),
      ],
    })),
  );
  if (rows.length === 0) return null;
  return {
    margin: words.say("reread.margin.readers"),
    explains: words.say("reread.explains.readers"),
    heading: words.say("reread.readers.heading", { readers: new Set(rows.map((row) => row.reader)).size }),
    table: {
      caption: words.say("reread.readers.caption"),
      columns: [
        column(words, "reread.measured.fundamental"),
        column(words, "reread.readers.reader"),
        column(words, "reread.measured.pairs", "end"),
        column(words, "reread.measured.bias", "end"),
        column(words, "reread.measured.typical", "end"),
        column(words, "reread.readers.shrunken", "end"),
      ],
      rows: rows.map(({ cells, tone }) => ({ cells, tone })),
    },
  };
}

/** The page of all that was read again. */
export function buildRereadsPage(
  words: Words,
  source: { readonly draws: readonly RereadDraw[]; readonly read: readonly ReadFundamental[] },
): RereadsPage {
  const measured = source.read.filter(({ fits }) => fits.length > 0).length;
  return {
    title: words.say("reread.title"),
    lede: words.say("reread.lede", { measured }),
    back: { href: "/settings", label: words.say("reread.back") },
    start: { href: "/rereads/new", label: words.say("reread.new") },
    draws: drawsTable(words, source.draws),
    measured: {
      margin: words.say("reread.margin.measured"),
      explains: words.say("reread.explains.measured"),
      heading: words.say("reread.measured.heading", { measured }),
      table: measuredTable(words, source.read),
      linkLabel: words.say("reread.measured.see"),
      links: source.read.map(({ fundamental }) => ({
        href: `/rereads/of/${fundamental.id}`,
        label: words.say("reread.measured.link", { name: sayFundamental(words, fundamental) }),
      })),
    },
    download: source.read.every(
      ({ error }) => error.sameFilm.pairs + error.sameStill.pairs + error.compared.length === 0,
    )
      ? null
      : { href: "/api/rereads/csv", label: words.say("reread.download") },
    readers: readersPart(words, source.read),
  };
}
