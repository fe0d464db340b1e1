import type { Fundamental } from "@/lib/domain/fundamental";
import type { ReadBack, ReadBackCandidate } from "@/lib/domain/read-back";
import type { Student } from "@/lib/domain/student";
import type { Words } from "@/lib/words/catalogue";
import { sayDay } from "@/lib/words/day-words";
import { sayFundamental } from "@/lib/words/say-fundamental";
import type { HappenPage, HappenPart } from "./happen-model";

/** Everything that the page of a student's read-backs rests on. */
export interface ReadBackSource {
  readonly student: Student;
  readonly readBacks: readonly ReadBack[];
  readonly fundamentals: readonly Fundamental[];
  /** The fundamental chosen; null: none yet. */
  readonly chosen: {
    readonly fundamental: Fundamental;
    readonly reader: string;
    readonly candidates: readonly ReadBackCandidate[];
  } | null;
  readonly dayOf: (instant: string) => string;
}

function nameOf(words: Words, fundamentals: readonly Fundamental[], id: string): string {
  const fundamental = fundamentals.find((each) => each.id === id);
  return fundamental ? sayFundamental(words, fundamental) : id;
}

function days(candidates: readonly ReadBackCandidate[]): ReadonlyMap<string, string> {
  return new Map(candidates.map(({ sessionId, day }) => [sessionId, day]));
}

/** Films that can't be read back, and why, each reason in a sentence with its days. */
function leftOut(words: Words, { reader, candidates }: NonNullable<ReadBackSource["chosen"]>): readonly string[] {
  const own = candidates.filter((each) => each.reader === reader);
  const hasReference = (each: ReadBackCandidate): boolean => (each.filmReference ?? "").trim() !== "";
  const groups = {
    "not-filmed": own.filter((each) => each.filmed === "no"),
    "no-reference": own.filter((each) => each.filmed === "yes" && !hasReference(each)),
    waits: own.filter((each) => each.filmed === "yes" && hasReference(each) && each.waits === "yes"),
  };
  const others = new Map<string, ReadBackCandidate[]>();
  for (const each of candidates.filter((one) => one.reader !== reader))
    others.set(each.reader, [...(others.get(each.reader) ?? []), each]);
  const said = (key: string, list: readonly ReadBackCandidate[], more: Readonly<Record<string, string>> = {}) => {
    const on = days(list);
    const listed = [...new Set(on.values())].map((day) => sayDay(words, day, "short")).join(", ");
    return on.size === 0 ? [] : [words.say(`read-back.left.${key}`, { films: on.size, days: listed, ...more })];
  };
  return [
    ...Object.entries(groups).flatMap(([key, list]) => said(key, list)),
    ...[...others].flatMap(([name, list]) => said("other-reader", list, { reader: name })),
  ];
}

function historyPart(words: Words, source: ReadBackSource): HappenPart {
  const { readBacks, fundamentals, student, dayOf } = source;
  return {
    margin: words.say("read-back.earlier"),
    explains: "",
    heading: words.say("read-back.earlier.heading", { readBacks: readBacks.length }),
    paragraphs: [],
    facts: [],
    table: {
      caption: words.say("read-back.earlier.caption"),
      columns: ["fundamental", "drawn", "reader", "read", "state"].map((column) => ({
        label: words.say(`read-back.earlier.${column}`),
        align: "start" as const,
      })),
      rows: readBacks.map((each) => ({
        cells: [
          nameOf(words, fundamentals, each.fundamentalId),
          sayDay(words, dayOf(each.drawnAt), "day-year"),
          each.reader,
          words.say("read-back.of", { typed: each.typed, items: each.items }),
          sayState(words, each, dayOf),
        ],
        tone: each.droppedAt === null ? ("plain" as const) : ("quiet" as const),
      })),
    },
    open: {
      label: words.say("happen.open"),
      links: readBacks.map((each) => ({
        href: `/students/${student.id}/read-back/${each.id}`,
        label: nameOf(words, fundamentals, each.fundamentalId),
      })),
    },
  };
}

function sayState(words: Words, readBack: ReadBack, dayOf: (instant: string) => string): string {
  if (readBack.droppedAt !== null)
    return words.say("read-back.dropped", { day: sayDay(words, dayOf(readBack.droppedAt), "short") });
  if (readBack.finishedAt === null) return words.say("read-back.is-open");
  return words.say("read-back.finished", { day: sayDay(words, dayOf(readBack.finishedAt), "short") });
}

/** Earlier films to be read for a fundamental, and what was read back before. */
export function buildReadBackPage(words: Words, source: ReadBackSource): HappenPage {
  const { student, chosen } = source;
  const left = chosen === null ? [] : leftOut(words, chosen);
  return {
    title: words.say("read-back.title", { alias: student.alias }),
    documentTitle: words.say("document-title", { page: words.say("read-back") }),
    lede: words.say("read-back.lede"),
    back: { href: `/students/${student.id}`, label: words.say("fundamental-page.back", { alias: student.alias }) },
    actions: [],
    parts: [
      ...(left.length === 0
        ? []
        : [
            {
              margin: words.say("read-back.left"),
              explains: words.say("read-back.left.explains"),
              heading: words.say("read-back.left.heading"),
              paragraphs: left,
              facts: [],
              table: null,
              open: null,
            },
          ]),
      ...(source.readBacks.length === 0 ? [] : [historyPart(words, source)]),
    ],
    cautions: [],
  };
}

/** A read-back that is over: what entered the record, and when; or that nothing did. */
export function buildReadBackDone(
  words: Words,
  source: Pick<ReadBackSource, "student" | "dayOf"> & {
    readonly readBack: ReadBack;
    readonly fundamental: Fundamental;
  },
): HappenPage {
  const { student, readBack, fundamental, dayOf } = source;
  const name = sayFundamental(words, fundamental);
  const finished = readBack.finishedAt !== null;
  const over = readBack.finishedAt ?? readBack.droppedAt ?? readBack.drawnAt;
  return {
    title: words.say(finished ? "read-back.done" : "read-back.given-up", { name, entered: readBack.entered }),
    documentTitle: words.say("document-title", { page: words.say("read-back") }),
    lede: words.say(finished ? "read-back.done.lede" : "read-back.given-up.lede", {
      ...{ items: readBack.items, typed: readBack.typed, passed: readBack.typed - readBack.entered },
      ...{ reader: readBack.reader, day: sayDay(words, dayOf(over), "day-year") },
    }),
    back: { href: `/students/${student.id}/read-back`, label: words.say("read-back") },
    actions:
      finished && readBack.entered > 0 ? [{ href: `/students/${student.id}/${fundamental.id}`, label: name }] : [],
    parts: [],
    cautions: [],
  };
}
