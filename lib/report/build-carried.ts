import type { SaidLook } from "@/lib/domain/carried-look";
import type { Fundamental } from "@/lib/domain/fundamental";
import type { Words } from "@/lib/words/catalogue";
import { sayDay } from "@/lib/words/day-words";
import { sayFits, sayLimit } from "@/lib/words/number-words";
import { sayFundamental } from "@/lib/words/say-fundamental";
import { sayFromTo, sayHappened, saySize } from "@/lib/words/say-verdict";
import type { TableModel } from "./basic-model";
import type { CarriedPart } from "./carried-model";
import type { ReaderSince } from "./reader-since";
import { sayJudged } from "./say-judged";

/** A look of another academy as it is kept here. */
export interface CarriedSource {
  readonly fundamental: Fundamental;
  /** Name under which the other academy's file goes; empty: it doesn't say. */
  readonly saidBy: string;
  readonly look: SaidLook;
}

/** The change that a snapshot said was proved, with when and how big. */
function sayChange(words: Words, fundamental: Fundamental, whole: NonNullable<SaidLook["whole"]>): string {
  if (whole.change === null)
    return whole.changeBelow === null
      ? ""
      : words.say("carried.below", { limit: sayLimit(words, whole.changeBelow, fundamental.unit) });
  const change = { ...whole.change, set80: null, set95: null };
  return words.say("carried.change", {
    levels: sayFromTo(words, change, fundamental.unit),
    size: saySize(words, change, fundamental.unit),
    happened: sayHappened(words, change),
  });
}

/**
 * One look in words and figures. The same function says it of a look that was carried here and of one that is said here, so
 * that nothing reads otherwise for having been carried.
 */
export function sayLook(
  words: Words,
  fundamental: Fundamental,
  look: SaidLook,
): { readonly said: string; readonly fits: string; readonly whole: string } {
  const { whole, verdict, listed, logBayesFactor } = look;
  const said = { verdict, listed, moved: whole?.moved ?? null, change: whole?.change ?? null };
  if (whole === null) {
    const key = (verdict === "gain" || verdict === "slip") && !listed ? "open" : verdict;
    return { said: words.say(`verdict.${key}`), fits: sayFits(words, logBayesFactor), whole: "" };
  }
  const { level, noChange, sessions, ownedSince } = whole;
  return {
    said: sayJudged(words, { verdict: { ...said, levelNow: level, noChange }, sessions }, fundamental),
    fits: sayFits(words, logBayesFactor),
    whole: [
      sayChange(words, fundamental, whole),
      ownedSince === null ? "" : words.say("owned.sentence", { day: sayDay(words, ownedSince, "short") }),
    ]
      .filter((text) => text !== "")
      .join(" "),
  };
}

function tableOf(words: Words, looks: readonly CarriedSource[], columns: readonly string[]): TableModel {
  const cells = ({ fundamental, saidBy, look }: CarriedSource): Readonly<Record<string, string>> => ({
    fundamental: sayFundamental(words, fundamental),
    day: sayDay(words, look.date, "day-year"),
    by: words.say("carried.by", { by: saidBy, named: saidBy === "" ? "no" : "yes" }),
    ...sayLook(words, fundamental, look),
  });
  return {
    caption: words.say("carried.caption"),
    columns: columns.map((name) => ({ label: words.say(`carried.column.${name}`), align: "start" as const })),
    rows: looks.map((one) => {
      const all = cells(one);
      return { cells: columns.map((name) => all[name] ?? ""), tone: "plain" as const };
    }),
  };
}

/**
 * Looks that came with a student from another academy, as they were said there.
 *
 * @param source.looks by day
 * @param source.of `season`: the latest of each fundamental; `fundamental`: every look of one
 * @param source.until the last day that is shown; absent: all
 * @returns null where nothing was carried up to then
 */
export function buildCarried(
  words: Words,
  source: {
    readonly looks: readonly CarriedSource[];
    readonly of: "season" | "fundamental";
    readonly until?: string;
    readonly importedOn: string;
    /** Who reads here, and since when; null: it isn't on file. */
    readonly reader: ReaderSince | null;
  },
): CarriedPart | null {
  const { of, until, importedOn, reader } = source;
  const known = source.looks.filter(({ look }) => until === undefined || look.date <= until);
  if (known.length === 0) return null;
  const latest = known.filter(
    (one, at) => !known.slice(at + 1).some((later) => later.fundamental.id === one.fundamental.id),
  );
  const names = [...new Set(known.map(({ saidBy }) => saidBy))].filter((name) => name !== "");
  return {
    margin: words.say("carried.margin"),
    heading: words.say("carried.heading", { by: names.join(", "), named: names.length === 0 ? "no" : "yes" }),
    paragraphs: [
      words.say("carried.text", { day: sayDay(words, importedOn, "day-year") }),
      ...(reader === null
        ? []
        : [words.say("carried.reader", { reader: reader.name, day: sayDay(words, reader.since, "day-year") })]),
    ],
    table:
      of === "season"
        ? tableOf(words, latest, ["fundamental", "day", "by", "said", "fits", "whole"])
        : tableOf(words, known, ["day", "by", "said", "fits", "whole"]),
  };
}
