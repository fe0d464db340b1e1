import type { OwningRule } from "@/lib/domain/owning-rule";
import { MEASURED, type MeasuredSeason, measuredSeason } from "@/lib/verdict/measured";
import { policyOwning } from "@/lib/verdict/owned-since";
import { POLICY } from "@/lib/verdict/policy";
import type { Words } from "@/lib/words/catalogue";
import { sayDay } from "@/lib/words/day-words";
import { sayNumber } from "@/lib/words/number-words";
import { sayOwning } from "@/lib/words/say-owning";
import type { Link, TableModel } from "./basic-model";
import { buildDecidesBrief, type DecidesBrief } from "./build-decides-brief";
import type { TextPage } from "./form-model";

/** A row of a hundred ticks, so many of them drawn. */
export interface TickRow {
  readonly label: string;
  readonly count: number;
  readonly countLabel: string;
}

/** The page that says how a verdict comes about, with the figures that were measured. */
export interface DecidesPage extends TextPage {
  readonly back: Link;
  readonly brief: DecidesBrief;
  readonly measured: {
    readonly margin: string;
    readonly heading: string;
    readonly explains: string;
    readonly rows: readonly TickRow[];
    readonly table: TableModel;
    readonly paragraphs: readonly string[];
  };
  readonly limits: {
    readonly margin: string;
    readonly heading: string;
    readonly table: TableModel;
    readonly paragraphs: readonly string[];
  };
}

/** Sizes of a true change that the figure shows, in sds of one session mean. */
const SIZES = ["1", "1.5", "2", "3"] as const;

/** What goes beyond the promise: the message, the kind of season, and which share is told. */
const LIMITS = [
  ["camera", "flat, camera spots without labels", "false"],
  ["noisy", "flat, day sd 4", "false"],
  ["drift", "flat, a reader's drift of 1 U over the season", "false"],
  ["spread", "flat, spread x 1.8 from session 20", "false"],
  ["small", "step 1 U", "found"],
] as const;

/** A share in hundredths, and how far such a count may be off, 95 of 100. */
function figure(words: Words, key: string, share: number, count: number): string {
  if (count === 0) return words.say("decides.figure.plain", { value: sayNumber(words, 100 * share, 1) });
  const off = 196 * Math.sqrt((share * (1 - share)) / count);
  return words.say(key, { value: sayNumber(words, 100 * share, 1), off: sayNumber(words, off, 1) });
}

/** The mean and the largest share of false words over the seasons within the promise. */
export function promisedFalse(): { readonly mean: number; readonly largest: MeasuredSeason } {
  const seasons = Object.values(MEASURED.seasons).filter((season) => season.kind === "promised");
  const mean = seasons.reduce((sum, season) => sum + season.falseWord, 0) / seasons.length;
  const largest = seasons.reduce((most, season) => (season.falseWord > most.falseWord ? season : most));
  return { mean, largest };
}

function tickRows(words: Words): readonly TickRow[] {
  const row = (label: string, share: number): TickRow => {
    const count = Math.round(100 * share);
    return { label, count, countLabel: words.say("decides.of-100", { count }) };
  };
  return [
    row(words.say("decides.row.unchanged"), promisedFalse().mean),
    ...SIZES.map((size) => row(words.say("decides.row.step", { size }), measuredSeason(`step ${size} U`).found)),
  ];
}

function promiseTable(words: Words): TableModel {
  const { mean, largest } = promisedFalse();
  const most = (share: number): string => words.say("decides.promise.most", { share });
  const none = words.say("decides.promise.none");
  const measured = (share: number, count: number): string => figure(words, "decides.figure", share, count);
  const promised = Object.values(MEASURED.seasons).filter((season) => season.kind === "promised").length;
  const falseRow = (key: string, name: string): readonly string[] => {
    const season = measuredSeason(name);
    return [words.say(`decides.scenario.${key}`), most(6), measured(season.falseWord, season.series)];
  };
  const two = measuredSeason("step 2 U");
  const three = measuredSeason("step 3 U");
  const flat = measuredSeason("flat");
  const families = MEASURED.lists.find((list) => list.changing === 0);
  const rows: readonly (readonly string[])[] = [
    [words.say("decides.scenario.mean"), most(5), measured(mean, promised * MEASURED.series)],
    [words.say("decides.scenario.worst"), most(6), measured(largest.falseWord, largest.series)],
    falseRow("odd", "one odd session of 4 U"),
    falseRow("misread", "flat, 2 % misread, correlation .3"),
    falseRow("one-swing", "flat, one swing a session"),
    [words.say("decides.scenario.found-2"), none, measured(two.found, two.series)],
    [words.say("decides.scenario.found-3"), none, measured(three.found, three.series)],
    [words.say("decides.scenario.taken-back"), most(5), measured(two.takenBack, Math.round(two.found * two.series))],
    [words.say("decides.scenario.level"), none, measured(flat.level95, flat.series)],
    [words.say("decides.scenario.share"), none, measured(flat.share95, flat.series)],
    ...MEASURED.lists
      .filter((list) => list.changing > 0)
      .map((list) => [
        words.say("decides.scenario.list", { changing: sayNumber(words, 100 * list.changing, 0) }),
        most(Math.round(100 * POLICY.listShare)),
        measured(list.falseDiscoveries, 0),
      ]),
    ...(families ? [[words.say("decides.scenario.families"), most(3), measured(families.studentsTold, 0)]] : []),
  ];
  return {
    caption: words.say("decides.table.caption"),
    columns: [
      { label: words.say("decides.table.what"), align: "start" },
      { label: words.say("decides.table.promise"), align: "start" },
      { label: words.say("decides.table.measured"), align: "end" },
    ],
    rows: rows.map((cells) => ({ cells, tone: "plain" })),
  };
}

function limitsTable(words: Words): TableModel {
  return {
    caption: words.say("decides.limits.caption"),
    columns: [
      { label: words.say("decides.limits.what"), align: "start" },
      { label: words.say("decides.limits.measured"), align: "start" },
      { label: words.say("decides.limits.helps"), align: "start" },
    ],
    rows: LIMITS.map(([key, name, told]) => {
      const season = measuredSeason(name);
      const share = told === "false" ? season.falseWord : season.found;
      return {
        cells: [
          words.say(`decides.limit.${key}`),
          figure(words, `decides.limit.${told}`, share, season.series),
          words.say(`decides.limit.${key}.helps`),
        ],
        tone: "plain",
      };
    }),
  };
}

function owningPart(words: Words, owning: OwningRule): TextPage["parts"][number] {
  return {
    margin: words.say("decides.owning"),
    heading: words.say("decides.owning.heading"),
    paragraphs: [words.say("owning.short", { rule: sayOwning(words, owning) }), words.say("decides.owning.2")],
    links: [],
  };
}

/** How Proofband decides, in plain words and measured figures. */
export function buildDecidesPage(words: Words, owning: OwningRule = policyOwning(POLICY)): DecidesPage {
  const two = Math.round(Math.exp(POLICY.limit));
  const alone = Math.round(Math.exp(POLICY.limit + POLICY.limitAlone));
  const args = {
    two,
    alone,
    early: POLICY.limitEarlyLooks,
    late: POLICY.limitLateLooks,
    direction: Math.round(100 * POLICY.direction),
    share: Math.round(100 * POLICY.listShare),
  };
  const part = (key: string, paragraphs: number): TextPage["parts"][number] => ({
    margin: words.say(`decides.${key}`),
    heading: words.say(`decides.${key}.heading`, args),
    paragraphs: Array.from({ length: paragraphs }, (_, i) => words.say(`decides.${key}.${i + 1}`, args)),
    links: [],
  });
  return {
    title: words.say("decides.title"),
    lede: words.say("decides.lede"),
    back: { href: "/students", label: words.say("decides.back") },
    parts: [
      part("question", 2),
      part("input", 2),
      part("proof", 4),
      part("apart", 2),
      part("list", 2),
      owningPart(words, owning),
    ],
    measured: {
      margin: words.say("decides.measured"),
      heading: words.say("decides.measured.heading", { false: sayNumber(words, 100 * promisedFalse().mean, 0) }),
      explains: words.say("decides.measured.explains"),
      rows: tickRows(words),
      table: promiseTable(words),
      paragraphs: [
        words.say("decides.measured.1", {
          command: MEASURED.command,
          date: sayDay(words, MEASURED.date, "full"),
          series: MEASURED.series,
          academies: MEASURED.academies,
          policy: MEASURED.policyVersion,
        }),
        words.say("decides.measured.2"),
      ],
    },
    brief: buildDecidesBrief(words),
    limits: {
      margin: words.say("decides.limits"),
      heading: words.say("decides.limits.heading"),
      table: limitsTable(words),
      paragraphs: [words.say("decides.limits.1"), words.say("decides.limits.2")],
    },
  };
}
