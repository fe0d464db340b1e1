import { BUILT_IN } from "@/lib/domain/catalogue";
import type { EarlierDefinition, Fundamental } from "@/lib/domain/fundamental";
import { isRead } from "@/lib/domain/fundamental-on";
import { SINCE_EVER } from "@/lib/domain/goal-band";
import { HALF_OF_SD, shownHalf } from "@/lib/domain/half-of-sd";
import type { Words } from "@/lib/words/catalogue";
import { sayDay } from "@/lib/words/day-words";
import { sayBand, sayNumber, withUnit } from "@/lib/words/number-words";
import { sayDefinition, sayFundamental, sayPlus } from "@/lib/words/say-fundamental";
import { buildChangeHistory } from "./change-history";
import type { HappenPage, HappenPart } from "./happen-model";
import type { TableModel } from "./page-model";

/** What the page of all that an academy measures rests on. */
export interface DefinitionsSource {
  /** The academy's own, those that are read no more too. */
  readonly own: readonly Fundamental[];
  /** How many readings there are of each of the own ones; none: not among them. */
  readonly counts: ReadonlyMap<string, number>;
  readonly today: string;
}

/** What the page of one own fundamental rests on. */
export interface DefinitionSource extends Omit<DefinitionsSource, "own"> {
  readonly fundamental: Fundamental;
  readonly dayOf: (instant: string) => string;
}

type Defined = Omit<Fundamental, "id" | "earlier">;

const inUnit = (words: Words, { unit }: Pick<Defined, "unit">, text: string): string => withUnit(words, text, unit);

function sayHalf(words: Words, of: Defined, sd: number): string {
  return words.say("definition.half", { half: inUnit(words, of, shownHalf(sd)) });
}

function saySensitivity(words: Words, of: Defined): string {
  const { yaw, roll, offset } = of.sensitivity;
  const each = (value: number): string => inUnit(words, of, sayNumber(words, value, value % 1 === 0 ? 0 : 2));
  return words.say("definition.sensitivity", { yaw: each(yaw), roll: each(roll), offset: each(offset) });
}

function sayRead(words: Words, { retiredOn }: Pick<Defined, "retiredOn">, today: string): string {
  return retiredOn && !isRead({ retiredOn }, today)
    ? words.say("definition.state.retired", { day: sayDay(words, retiredOn, "day-year") })
    : words.say("definition.state.read");
}

/** A list of definitions in words: name, what is measured, its plus, and how sure one reading is. */
function listTable(
  words: Words,
  kind: "own" | "built-in",
  fundamentals: readonly Fundamental[],
  { counts, today }: DefinitionsSource,
): TableModel {
  const names = ["name", "what", "plus", "reading", "camera", ...(kind === "own" ? ["readings", "state"] : [])];
  return {
    caption: words.say(`definitions.caption.${kind}`),
    columns: names.map((name) => ({
      label: words.say(`definition.column.${name}`),
      align: ["reading", "camera", "readings"].includes(name) ? ("end" as const) : ("start" as const),
    })),
    rows: fundamentals.map((each) => ({
      cells: [
        sayFundamental(words, each),
        sayDefinition(words, each),
        sayPlus(words, each),
        ...[each.readerSd, each.cameraSdUnknown].map((sd) =>
          words.say("definition.half", { half: inUnit(words, each, sayNumber(words, HALF_OF_SD * sd, 1)) }),
        ),
        ...(kind === "own" ? [String(counts.get(each.id) ?? 0), sayRead(words, each, today)] : []),
      ],
      tone: isRead(each, today) ? ("plain" as const) : ("quiet" as const),
      ...(kind === "own" ? { href: `/settings/fundamentals/${encodeURIComponent(each.id)}` } : {}),
    })),
  };
}

/** Everything that an academy measures: its own fundamentals with the way to each, and the built-in ones. */
export function buildDefinitions(words: Words, source: DefinitionsSource): HappenPage {
  const { own } = source;
  const part = (kind: "own" | "built-in", fundamentals: readonly Fundamental[]): HappenPart => ({
    margin: words.say(`definitions.${kind}`),
    explains: words.say(`definitions.${kind}.explains`),
    heading: words.say(`definitions.${kind}.heading`, { count: fundamentals.length }),
    paragraphs: [],
    facts: [],
    table: fundamentals.length === 0 ? null : listTable(words, kind, fundamentals, source),
    open: null,
  });
  return {
    title: words.say("definitions.title", { own: own.length }),
    documentTitle: words.say("document-title", { page: words.say("definitions") }),
    lede: words.say("definitions.lede"),
    back: { href: "/settings", label: words.say("goals.back.settings") },
    actions: [],
    parts: [part("own", own), part("built-in", BUILT_IN)],
    cautions: [],
  };
}

const PARTS = ["name", "how", "plus", "film", "mirrors", "plausible", "reading", "camera", "sensitivity"] as const;
const ALL_PARTS = [...PARTS, "worthwhile", "band", "state"] as const;

/** One part of a definition in words. */
function sayPart(words: Words, of: Defined, part: (typeof ALL_PARTS)[number]): string {
  const said: Readonly<Record<(typeof ALL_PARTS)[number], () => string>> = {
    name: () => of.ownName ?? "",
    how: () => of.ownHow ?? words.say("definition.nothing"),
    plus: () => of.ownPlus ?? words.say("definition.nothing"),
    film: () =>
      words.say("definition.film", {
        unit: words.say(`unit.${of.unit}.name`),
        view: words.say(`view.${of.view}`),
        checkpoint: words.say(`checkpoint.${of.checkpoint}`),
      }),
    mirrors: () => words.say(`definition.mirrors.${of.mirrors}`),
    plausible: () => sayBand(words, of.plausible, of.unit),
    reading: () => sayHalf(words, of, of.readerSd),
    camera: () => sayHalf(words, of, of.cameraSdUnknown),
    sensitivity: () => saySensitivity(words, of),
    worthwhile: () =>
      of.worthwhile === undefined
        ? words.say("definition.worthwhile.band")
        : inUnit(words, of, String(Math.round(of.worthwhile * 100) / 100)),
    band: () => sayBand(words, of.goals.iron, of.unit),
    state: () => words.say(of.retiredOn ? "definition.was.retired" : "definition.state.read"),
  };
  return said[part]();
}

function historyPart(words: Words, { fundamental, dayOf }: DefinitionSource): HappenPart {
  const before = fundamental.earlier ?? [];
  const rows = before.map((was: EarlierDefinition, at) => {
    const became: Defined =
      before[at + 1] === undefined ? fundamental : ({ ...before[at + 1], derivedFrom: null } as Defined);
    const then: Defined = { ...was, derivedFrom: null };
    const changed = ALL_PARTS.filter((part) => sayPart(words, then, part) !== sayPart(words, became, part));
    return [
      sayDay(words, dayOf(was.changedAt), "day-year"),
      // Where it stands in the order of work is no part of what is measured.
      changed.length === 0
        ? words.say("definition.was.order")
        : changed
            .map((part) =>
              words.say("library.was", {
                part: words.say(`definition.part.${part}`),
                was: sayPart(words, then, part),
              }),
            )
            .join(", "),
      was.until === SINCE_EVER
        ? words.say("definition.until.none")
        : words.say("definition.until", { day: sayDay(words, was.until, "day-year") }),
      was.why,
      was.who,
    ];
  });
  return buildChangeHistory(words, {
    explains: words.say("definition.history.explains"),
    columns: ["changed", "was", "holds", "why", "who"].map((name) => words.say(`definition.history.${name}`)),
    rows,
  });
}

/** One own fundamental: how it is defined now, and everything that it was before. */
export function buildDefinition(words: Words, source: DefinitionSource): HappenPage {
  const { fundamental, counts, today } = source;
  const readings = counts.get(fundamental.id) ?? 0;
  const shown = ALL_PARTS.filter((part) => !["name", "band", "state"].includes(part));
  return {
    title: words.say("definition.title", { name: sayFundamental(words, fundamental) }),
    documentTitle: words.say("document-title", { page: words.say("definition") }),
    lede: words.say("definition.lede", { readings }),
    back: { href: "/settings/fundamentals", label: words.say("definitions") },
    actions: [
      {
        href: `/settings/goals?fundamental=${encodeURIComponent(fundamental.id)}`,
        label: words.say("definition.bands"),
      },
    ],
    parts: [
      {
        margin: words.say("library-drill.now"),
        explains: words.say("definition.explains"),
        heading: words.say("definition.now"),
        paragraphs: [],
        facts: [
          ...shown.map((part) => ({
            name: words.say(`definition.part.${part}`),
            value: sayPart(words, fundamental, part),
            note: "",
          })),
          { name: words.say("definition.part.state"), value: sayRead(words, fundamental, today), note: "" },
        ],
        table: null,
        open: null,
      },
      historyPart(words, source),
    ],
    cautions: [],
  };
}
