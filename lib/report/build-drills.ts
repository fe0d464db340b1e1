import { dayFromNumber, dayNumber } from "@/lib/domain/calendar-day";
import type { DecisionRecord } from "@/lib/domain/drill-decision";
import type { DrillPractice } from "@/lib/domain/drill-practice";
import type { AssignmentRecord } from "@/lib/domain/drill-record";
import type { Fundamental } from "@/lib/domain/fundamental";
import type { Student } from "@/lib/domain/student";
import type { Words } from "@/lib/words/catalogue";
import { sayDay, sayStretch } from "@/lib/words/day-words";
import { sayDose } from "@/lib/words/say-dose";
import { sayDrillCounts } from "@/lib/words/say-drill-practice";
import { sayFundamental } from "@/lib/words/say-fundamental";
import { buildDecisions } from "./build-decisions";
import { sayRecorded } from "./build-events";
import { cautionsFor } from "./cautions";
import { drillCautions } from "./drill-cautions";
import type { HappenPage, HappenPart } from "./happen-model";
import type { Fact, Link } from "./page-model";
import { sayRemeasure } from "./say-remeasure";

/** Everything that the pages of a student's drills rest on. */
export interface DrillsSource {
  readonly student: Student;
  readonly drills: readonly AssignmentRecord[];
  /** Practice of each, asked and logged, by its id; one that has not begun has none. */
  readonly practice: ReadonlyMap<string, DrillPractice>;
  readonly fundamentals: readonly Fundamental[];
  readonly today: string;
  readonly dayOf: (instant: string) => string;
}

/** One drill with what its page says of it. */
export interface DrillSource extends DrillsSource {
  readonly given: AssignmentRecord;
  readonly drill: DrillWords;
  readonly decisions: readonly DecisionRecord[];
  /** What happened since it began; null: it was taken back. */
  readonly since: HappenPart | null;
  /** Days before a film that are kept free of practice. */
  readonly rest: number;
}

/** A drill of the library, as far as its page says it. */
export interface DrillWords {
  readonly how: string;
  readonly cautions: string;
  /** How it went by name and words on the day on which it was given, where that was something else; null: the same. */
  readonly asGiven: { readonly name: string; readonly how: string } | null;
}

function sayDays(words: Words, { start, end }: AssignmentRecord): string {
  return end === null
    ? words.say("season.drills.since", { day: sayDay(words, start, "short") })
    : sayStretch(words, start, end);
}

function sayFor(words: Words, fundamentals: readonly Fundamental[], { fundamentalId }: AssignmentRecord): string {
  const fundamental = fundamentals.find((each) => each.id === fundamentalId);
  return fundamental ? sayFundamental(words, fundamental) : words.say("season.drills.other");
}

function sayState(words: Words, { state, end, endWhy }: AssignmentRecord): string {
  if (state === "taken-back") return words.say("drills.taken-back");
  if (end === null) return words.say("drills.runs");
  return endWhy === null ? words.say("drills.stopped") : words.say("drills.stopped-why", { why: endWhy });
}

function sayPractice(words: Words, { practice }: DrillsSource, { id, state }: AssignmentRecord): string {
  const counted = practice.get(id);
  return counted === undefined || state !== "stands" ? "" : sayDrillCounts(words, counted);
}

function listPart(words: Words, source: DrillsSource, page: string): HappenPart {
  const { fundamentals } = source;
  const drills = [...source.drills].reverse();
  const running = drills.filter(({ state, end }) => state === "stands" && end === null).length;
  return {
    margin: words.say("drills"),
    explains: words.say("drills.explains"),
    heading: words.say("drills.heading", { running, drills: drills.length }),
    paragraphs: drills.length === 0 ? [words.say("drills.none")] : [],
    facts: [],
    table:
      drills.length === 0
        ? null
        : {
            caption: words.say("drills.caption"),
            columns: ["season.drills.drill", "season.drills.for", "season.drills.days", "season.drills.dose"]
              .concat("drill.fact.practice", "drill.fact.remeasure", "practice.state")
              .map((key) => ({ label: words.say(key), align: "start" as const })),
            rows: drills.map((given) => ({
              cells: [
                given.drill,
                sayFor(words, fundamentals, given),
                sayDays(words, given),
                sayDose(words, given),
                sayPractice(words, source, given),
                given.end === null && given.state === "stands"
                  ? sayRemeasure(words, given.remeasureOn, source.today, "short")
                  : "",
                sayState(words, given),
              ],
              tone: given.state === "stands" ? ("plain" as const) : ("quiet" as const),
            })),
          },
    open:
      drills.length === 0
        ? null
        : {
            label: words.say("happen.open"),
            links: drills.map(({ id, drill }) => ({ href: `${page}/drills/${id}`, label: drill })),
          },
  };
}

/** Every drill given to a student, latest first. */
export function buildDrillsPage(words: Words, source: DrillsSource): HappenPage {
  const { student } = source;
  const page = `/students/${student.id}`;
  const running = source.drills.filter(({ state, end }) => state === "stands" && end === null).length;
  return {
    title: words.say("drills.title", { alias: student.alias, running }),
    documentTitle: words.say("document-title", { page: words.say("drills") }),
    lede: words.say("drills.lede"),
    back: { href: page, label: words.say("fundamental-page.back", { alias: student.alias }) },
    actions: [
      { href: `${page}/drills/new`, label: words.say("drill-form.start-one") },
      { href: `${page}/practice`, label: words.say("practice-form.heading") },
    ],
    parts: [listPart(words, source, page)],
    cautions: [...drillCautions(words, source), ...cautionsFor(words, student, source.today)],
  };
}

/** Why it stops: pain in any case, and the rule that was given. */
function sayStops(words: Words, { stopRule }: AssignmentRecord): string {
  return stopRule === "" ? words.say("drill.stops.pain") : words.say("drill.stops.rule", { stop: stopRule });
}

function drillPart(words: Words, source: DrillSource): HappenPart {
  const { given, drill, dayOf, rest, today } = source;
  const fact = (key: string, value: string, note = ""): Fact[] =>
    value === "" ? [] : [{ name: words.say(key), value, note }];
  const restFrom = given.remeasureOn === null ? null : dayFromNumber(dayNumber(given.remeasureOn) - rest);
  const rests = restFrom !== null && restFrom > given.start && given.end === null && today < (given.remeasureOn ?? "");
  return {
    margin: words.say("practice.drill"),
    explains: "",
    heading: given.drill,
    paragraphs: [drill.how, drill.cautions].filter((text) => text !== ""),
    facts: [
      ...(drill.asGiven === null
        ? []
        : fact(
            "drill.fact.as-given",
            words.say("drill.as-given", { drill: drill.asGiven.name, how: drill.asGiven.how }),
          )),
      ...fact("season.drills.for", sayFor(words, source.fundamentals, given)),
      ...fact("season.drills.days", sayDays(words, given)),
      ...fact("season.drills.dose", sayDose(words, { ...given, stopRule: "" })),
      ...fact("drill.fact.stops", sayStops(words, given)),
      ...fact(
        "drill.fact.remeasure",
        given.end === null ? sayRemeasure(words, given.remeasureOn, today) : "",
        rests ? words.say("drill.remeasure.rest", { day: sayDay(words, restFrom, "short") }) : "",
      ),
      ...fact("practice.state", sayState(words, given)),
      ...fact("practice.recorded", sayRecorded(words, given, dayOf)),
    ],
    table: null,
    open: null,
  };
}

function actionsOf(words: Words, { given }: DrillSource, page: string): readonly Link[] {
  if (given.state !== "stands") return [];
  return [
    given.end === null
      ? { href: `${page}/${given.id}/decide`, label: words.say("drill.decide") }
      : { href: `${page}/new?again=${given.id}`, label: words.say("drill.again") },
    { href: `${page}/new?instead=${given.id}`, label: words.say("happen.event.correct") },
  ];
}

/** One drill as it was given: what it is, its dose and days, what happened since, what was decided, and its cautions. */
export function buildDrillPage(words: Words, source: DrillSource): HappenPage {
  const { student, given, since } = source;
  const page = `/students/${student.id}/drills`;
  const decisions = buildDecisions(words, source);
  return {
    title: words.say(given.state === "stands" ? "drill.title" : "drill.title-back", {
      alias: student.alias,
      drill: given.drill,
      days: sayDays(words, given),
    }),
    documentTitle: words.say("document-title", { page: words.say("practice.drill") }),
    lede: "",
    back: { href: page, label: words.say("drill.back", { alias: student.alias }) },
    actions: actionsOf(words, source, page),
    parts: [drillPart(words, source), ...(since === null ? [] : [since]), ...(decisions === null ? [] : [decisions])],
    cautions: [...drillCautions(words, source), ...cautionsFor(words, student, source.today)],
  };
}
