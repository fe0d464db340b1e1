import { mondayOf, type Practice, practiceWeeks, type SaidPain } from "@/lib/domain/practice";
import type { DrillAssignment, Student } from "@/lib/domain/student";
import { LOAD_THRESHOLDS } from "@/lib/verdict/load-thresholds";
import type { Words } from "@/lib/words/catalogue";
import { sayDay } from "@/lib/words/day-words";
import { sayPlace } from "@/lib/words/say-place";
import { sayRecorded } from "./build-events";
import { cautionsFor } from "./cautions";
import type { HappenPage, HappenPart } from "./happen-model";
import { weekTable } from "./practice-lanes";

/** Everything that a student's page of practice rests on. */
export interface PracticeSource {
  readonly student: Student;
  readonly entries: readonly Practice[];
  readonly drills: readonly DrillAssignment[];
  /** What was said to hurt, by day; null: whoever looks may not know it. */
  readonly pain: readonly SaidPain[] | null;
  readonly today: string;
  readonly dayOf: (instant: string) => string;
}

function sayState(words: Words, entry: Practice, dayOf: PracticeSource["dayOf"]): string {
  return entry.voidedAt === null
    ? words.say("happen.stands")
    : words.say("happen.taken-back", { day: sayDay(words, dayOf(entry.voidedAt), "short") });
}

function entriesPart(words: Words, { student, entries, drills, dayOf }: PracticeSource): HappenPart {
  const latest = [...entries].reverse();
  const number = (value: number | null): string => (value === null ? "" : String(value));
  const standing = latest.filter((entry) => entry.voidedAt === null).length;
  return {
    margin: words.say("practice.entries"),
    explains: words.say("happen.events.explains"),
    heading: words.say("practice.entries.heading", { entries: standing, back: latest.length - standing }),
    paragraphs: [],
    facts: [],
    table: {
      caption: words.say("practice.entries.caption"),
      columns: (["day", "minutes", "balls", "drill", "felt", "source", "recorded", "state"] as const).map((column) => ({
        label: words.say(`practice.${column}`),
        align: column === "minutes" || column === "balls" ? ("end" as const) : ("start" as const),
      })),
      rows: latest.map((entry) => ({
        cells: [
          sayDay(words, entry.day, "with-weekday"),
          number(entry.minutes),
          number(entry.balls),
          drills.find((drill) => drill.id === entry.assignmentId)?.drill ?? "",
          entry.felt === null ? "" : words.say(`practice.felt.${entry.felt}`),
          words.say(`practice.source.${entry.source}`),
          sayRecorded(words, entry, dayOf),
          sayState(words, entry, dayOf),
        ],
        tone: entry.voidedAt === null ? ("plain" as const) : ("quiet" as const),
      })),
    },
    open: null,
    press: {
      label: words.say("practice.change"),
      buttons: latest.map((entry) => ({
        label: words.say(entry.voidedAt === null ? "practice.take-back" : "practice.put-back", {
          day: sayDay(words, entry.day, "short"),
        }),
        hidden: {
          studentId: student.id,
          practiceId: entry.id,
          wish: entry.voidedAt === null ? "take" : "put",
        },
      })),
    },
  };
}

/** A young body's load: this week's hours against years of age, where both are known. */
function loadCaution(words: Words, { student, entries, today }: PracticeSource): readonly string[] {
  if (student.birthYear === null) return [];
  const age = Number(today.slice(0, 4)) - student.birthYear;
  const week = practiceWeeks(entries).find(({ monday }) => monday === mondayOf(today));
  const { juniorAge, minutesPerYear } = LOAD_THRESHOLDS;
  if (age > juniorAge.value || (week?.minutes ?? 0) <= age * minutesPerYear.value) return [];
  return [words.say("practice.load", { hours: Math.round((week?.minutes ?? 0) / 60), age })];
}

/** What hurt, latest first: in plain lines and no table, so that no file of the page's tables holds it. */
function painPart(words: Words, { pain, dayOf }: PracticeSource): HappenPart[] {
  if (pain === null || pain.length === 0) return [];
  return [
    {
      margin: words.say("pain.margin"),
      explains: words.say("pain.explains"),
      heading: words.say("pain.heading", { days: new Set(pain.map(({ day }) => day)).size }),
      paragraphs: [
        words.say("pain.stop"),
        ...[...pain].reverse().map((said) =>
          words.say("pain.said", {
            day: sayDay(words, said.day, "with-weekday"),
            place: sayPlace(words, said.place),
            recorded: sayRecorded(words, said, dayOf),
          }),
        ),
      ],
      facts: [],
      table: null,
      open: null,
    },
  ];
}

/** A student's practice: weeks, and every entry with the button that takes it back. */
export function buildPracticePage(words: Words, source: PracticeSource): HappenPage {
  const { student, entries } = source;
  const weeks = practiceWeeks(entries);
  const days = weeks.reduce((sum, week) => sum + week.days, 0);
  return {
    title: words.say("practice.title", { alias: student.alias, days }),
    documentTitle: words.say("document-title", { page: words.say("practice") }),
    lede: words.say("practice.lede"),
    back: { href: `/students/${student.id}`, label: words.say("fundamental-page.back", { alias: student.alias }) },
    actions: [{ href: `/students/${student.id}/drills`, label: words.say("drills") }],
    parts: [
      ...painPart(words, source),
      {
        margin: words.say("practice.weeks"),
        explains: "",
        heading: words.say("practice.weeks.heading", { weeks: weeks.length }),
        paragraphs: weeks.length === 0 ? [words.say("practice.none")] : [],
        facts: [],
        table: weeks.length === 0 ? null : weekTable(words, weeks),
        open: null,
      },
      ...(entries.length === 0 ? [] : [entriesPart(words, source)]),
    ],
    cautions: [...loadCaution(words, source), ...cautionsFor(words, student, source.today)],
  };
}
