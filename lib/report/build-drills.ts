import type { AssignmentRecord } from "@/lib/domain/drill-record";
import type { Fundamental } from "@/lib/domain/fundamental";
import type { Student } from "@/lib/domain/student";
import type { Words } from "@/lib/words/catalogue";
import { sayDay, sayStretch } from "@/lib/words/day-words";
import { sayFundamental } from "@/lib/words/say-fundamental";
import { sayRecorded } from "./build-events";
import { cautionsFor } from "./cautions";
import type { HappenPage, HappenPart } from "./happen-model";
import type { Fact } from "./page-model";

/** Everything that the pages of a student's drills rest on. */
export interface DrillsSource {
  readonly student: Student;
  readonly drills: readonly AssignmentRecord[];
  readonly fundamentals: readonly Fundamental[];
  readonly today: string;
  readonly dayOf: (instant: string) => string;
}

/** A drill of the library, as far as its page says it. */
export interface DrillWords {
  readonly how: string;
  readonly cautions: string;
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
              .concat("practice.state")
              .map((key) => ({ label: words.say(key), align: "start" as const })),
            rows: drills.map((given) => ({
              cells: [
                given.drill,
                sayFor(words, fundamentals, given),
                sayDays(words, given),
                given.dose,
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
    cautions: cautionsFor(words, student, source.today),
  };
}

/** One drill as it was given: what it is, its dose and days, and its cautions. */
export function buildDrillPage(
  words: Words,
  source: DrillsSource & { readonly given: AssignmentRecord; readonly drill: DrillWords },
): HappenPage {
  const { student, given, drill, dayOf } = source;
  const page = `/students/${student.id}/drills`;
  const fact = (key: string, value: string): Fact[] =>
    value === "" ? [] : [{ name: words.say(key), value, note: "" }];
  return {
    title: words.say(given.state === "stands" ? "drill.title" : "drill.title-back", {
      alias: student.alias,
      drill: given.drill,
      days: sayDays(words, given),
    }),
    documentTitle: words.say("document-title", { page: words.say("practice.drill") }),
    lede: "",
    back: { href: page, label: words.say("drill.back", { alias: student.alias }) },
    actions:
      given.state === "stands"
        ? [{ href: `${page}/new?instead=${given.id}`, label: words.say("happen.event.correct") }]
        : [],
    parts: [
      {
        margin: words.say("practice.drill"),
        explains: "",
        heading: given.drill,
        paragraphs: [drill.how, drill.cautions].filter((text) => text !== ""),
        facts: [
          ...fact("season.drills.for", sayFor(words, source.fundamentals, given)),
          ...fact("season.drills.days", sayDays(words, given)),
          ...fact("season.drills.dose", given.dose),
          ...fact("practice.state", sayState(words, given)),
          ...fact("practice.recorded", sayRecorded(words, given, dayOf)),
        ],
        table: null,
        open: null,
      },
    ],
    cautions: cautionsFor(words, student, source.today),
  };
}
