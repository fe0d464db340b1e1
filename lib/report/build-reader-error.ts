import type { RereadPair } from "@/lib/domain/reread";
import type { Outcome } from "@/lib/stats/outcome";
import { POLICY } from "@/lib/verdict/policy";
import type { LevelError, OwnError } from "@/lib/verdict/reader-error";
import { READER_ERROR_THRESHOLDS } from "@/lib/verdict/reader-error-thresholds";
import type { Words } from "@/lib/words/catalogue";
import { sayDay } from "@/lib/words/day-words";
import { sayFundamental } from "@/lib/words/say-fundamental";
import { sayDifference, sayReadingSd } from "@/lib/words/say-reading";
import type { TableModel } from "./basic-model";
import { errorCells, missingPairs, type ReadFundamental, sayJudgedWith } from "./build-rereads";
import { buildDifferencePlot } from "./difference-plot";
import type { ReaderErrorPage, RereadLevelPart } from "./reread-model";

/** What the results of one fundamental rest on. */
export interface ReaderErrorSource extends ReadFundamental {
  readonly pairs: readonly RereadPair[];
}

const PLAIN = { tone: "plain" } as const;

function columns(words: Words, keys: readonly string[]): TableModel["columns"] {
  return keys.map((key, at) => ({ label: words.say(key), align: at === 0 ? ("start" as const) : ("end" as const) }));
}

/** Which way a bias goes where its interval leaves 0 out. */
function biasOf(words: Words, level: LevelError, unit: ReadFundamental["fundamental"]["unit"]) {
  if (level.pooled.kind !== "ok" || level.pooled.value.bias.kind !== "ok") return { bias: "none", value: "" };
  const { difference, low, high } = level.pooled.value.bias.value;
  const bias = low > 0 ? "higher" : high < 0 ? "lower" : "unsure";
  return { bias, value: sayDifference(words, { value: difference, low, high }, unit) };
}

function levelPart(words: Words, source: ReaderErrorSource, level: LevelError, key: "film" | "still"): RereadLevelPart {
  const { fundamental } = source;
  const { unit } = fundamental;
  const sd = (value: number | null): string =>
    value === null ? words.say("reread.none") : sayReadingSd(words, value, unit);
  const whole = (error: OwnError["error"]): string => sd(error.kind === "ok" ? error.value.whole : null);
  const row = (name: string, pairs: number, error: OwnError["error"], shrunken: number | null) => ({
    ...PLAIN,
    cells: [
      name,
      String(pairs),
      ...errorCells(words, error, unit),
      whole(error),
      ...(key === "film" ? [sd(shrunken)] : []),
    ],
  });
  const all = words.say("reread-of.level.everybody");
  const shrunkenAll = source.error.readerSd.kind === "ok" ? source.error.readerSd.value : null;
  const pairs = source.pairs.filter((pair) => pair.level === level.level && pair.reader === pair.firstReader);
  return {
    margin: words.say(`reread-of.margin.${key}`),
    explains: words.say(`reread-of.explains.${key}`),
    heading: words.say("reread-of.level.heading", { pairs: level.pairs, ...biasOf(words, level, unit) }),
    table:
      level.pairs === 0
        ? null
        : {
            caption: words.say("reread-of.level.caption", { level: words.say(`reread.level.${level.level}`) }),
            columns: columns(words, [
              "reread.readers.reader",
              "reread.measured.pairs",
              "reread.measured.bias",
              "reread.measured.typical",
              "reread.readers.whole",
              ...(key === "film" ? ["reread.readers.shrunken"] : []),
            ]),
            rows: [
              row(all, level.pairs, level.pooled, shrunkenAll),
              ...level.readers.map((own) => row(own.reader, own.pairs, own.error, own.shrunken)),
            ],
          },
    plot: buildDifferencePlot(words, fundamental, pairs, level),
  };
}

function judgedPart(words: Words, source: ReaderErrorSource): ReaderErrorPage["judged"] {
  const { fundamental, fits } = source;
  const { unit } = fundamental;
  const newest = fits.at(-1);
  const worth = READER_ERROR_THRESHOLDS.customaryWorth.value;
  const customary = sayReadingSd(words, fundamental.readerSd, unit);
  return {
    margin: words.say("reread-of.margin.judged"),
    heading: words.say("reread-of.judged.heading", { text: sayJudgedWith(words, source) }),
    text:
      newest !== undefined && missingPairs(newest.pairs) === 0
        ? words.say("reread-of.judged.measured", { pairs: newest.pairs, customary, worth })
        : words.say("reread-of.judged.customary", { worth }),
    table:
      fits.length === 0
        ? null
        : {
            caption: words.say("reread-of.judged.fits"),
            columns: columns(words, [
              "reread-of.judged.number",
              "reread-of.judged.from",
              "reread.measured.pairs",
              "reread-of.judged.sd",
              "reread-of.judged.offset",
            ]),
            rows: fits
              .map((fit) => ({
                ...PLAIN,
                cells: [
                  String(fit.number),
                  sayDay(words, fit.fromDay, "day-year"),
                  String(fit.pairs),
                  sayReadingSd(words, fit.readerSd, unit),
                  fit.offsetSd === null ? words.say("reread.none") : sayReadingSd(words, fit.offsetSd, unit),
                ],
              }))
              .reverse(),
          },
  };
}

function missingOf(outcome: Outcome<number>): number {
  return outcome.kind === "ok" ? 0 : Math.max(0, outcome.need - outcome.have);
}

function twoReaders(words: Words, { fundamental, error }: ReaderErrorSource): ReaderErrorPage["two"] {
  const { unit } = fundamental;
  const { offsetSd, compared, readerSd } = error;
  const standing = readerSd.kind === "ok" ? readerSd.value : fundamental.readerSd;
  const customary = sayReadingSd(words, POLICY.readerOffset * standing, unit);
  const none = words.say("reread.none");
  return {
    margin: words.say("reread-of.margin.two"),
    explains: words.say("reread-of.explains.two"),
    heading: words.say("reread-of.two.heading", {
      kind: offsetSd.kind === "ok" ? "measured" : "missing",
      sd: offsetSd.kind === "ok" ? sayReadingSd(words, offsetSd.value, unit) : "",
      missing: missingOf(offsetSd),
    }),
    text: words.say(offsetSd.kind === "ok" ? "reread-of.two.text" : "reread-of.two.customary", { customary }),
    table:
      compared.length === 0
        ? null
        : {
            caption: words.say("reread-of.two.caption"),
            columns: columns(
              words,
              ["readers", "swings", "bias", "lower", "upper"].map((name) => `reread-of.two.${name}`),
            ),
            rows: compared.map(({ readers: [first, second], swings, agreement }) => ({
              ...PLAIN,
              cells: [
                words.say("reread-of.two.pair", { first, second }),
                String(swings),
                ...(agreement.kind === "ok"
                  ? [agreement.value.bias, agreement.value.lower, agreement.value.upper].map((estimate) =>
                      sayDifference(words, estimate, unit),
                    )
                  : [none, none, none]),
              ],
            })),
          },
  };
}

/** The results of one fundamental: what verdicts take, the errors by reader and level, and two readers compared. */
export function buildReaderErrorPage(words: Words, source: ReaderErrorSource): ReaderErrorPage {
  const { fundamental, error } = source;
  const kind = error.readerSd.kind === "ok" ? "measured" : "missing";
  const sd = error.readerSd.kind === "ok" ? sayReadingSd(words, error.readerSd.value, fundamental.unit) : "";
  return {
    title: words.say("reread-of.title", { name: sayFundamental(words, fundamental), kind, sd }),
    lede: words.say("reread-of.lede", { kind, missing: missingOf(error.readerSd) }),
    back: { href: "/rereads", label: words.say("reread-of.back") },
    judged: judgedPart(words, source),
    film: levelPart(words, source, error.sameFilm, "film"),
    still: levelPart(words, source, error.sameStill, "still"),
    two: twoReaders(words, source),
  };
}
