import type { FiledEvent, FiledRebaseline } from "@/lib/domain/event-record";
import type { Fundamental } from "@/lib/domain/fundamental";
import type { Student } from "@/lib/domain/student";
import type { Words } from "@/lib/words/catalogue";
import { sayDay } from "@/lib/words/day-words";
import { sayEventDays } from "@/lib/words/say-event";
import { sayFundamental } from "@/lib/words/say-fundamental";
import { sayEventMore, sayRecorded } from "./build-events";
import { cautionsFor } from "./cautions";
import type { HappenPage, HappenPart } from "./happen-model";
import type { Fact } from "./page-model";

/** A measured fundamental, and how many of its sessions lie on each side of an event's day. */
export interface SplitTrack {
  readonly fundamental: Fundamental;
  readonly before: number;
  readonly since: number;
}

/** Everything that the page of one event rests on. */
export interface EventSource {
  readonly student: Student;
  readonly event: FiledEvent;
  readonly tracks: readonly SplitTrack[];
  /** Of this event alone, oldest first. */
  readonly changes: readonly FiledRebaseline[];
  readonly today: string;
  readonly dayOf: (instant: string) => string;
}

/** What beginning a track anew at an event does, said alike before and after. */
export function sayAnew(words: Words, event: FiledEvent, { fundamental, before, since }: SplitTrack): string {
  return words.say("happen.anew", {
    name: sayFundamental(words, fundamental),
    day: sayDay(words, event.day, "short"),
    before,
    since,
  });
}

function namesOf(words: Words, ids: readonly string[], tracks: readonly SplitTrack[]): string {
  if (ids.length === 0) return words.say("happen.nothing-anew");
  return ids
    .map((id) => {
      const track = tracks.find(({ fundamental }) => fundamental.id === id);
      return track ? sayFundamental(words, track.fundamental) : id;
    })
    .join(", ");
}

function anewPart(words: Words, { event, tracks }: EventSource): HappenPart {
  const anew = tracks.filter(({ fundamental }) => event.rebaselines.includes(fundamental.id));
  const stands = event.voidedAt === null;
  const said = anew.map((track) => sayAnew(words, event, track));
  return {
    margin: words.say("happen.event.does"),
    explains: "",
    heading: words.say("happen.event.does.heading", { tracks: stands ? event.rebaselines.length : 0 }),
    paragraphs: stands
      ? [words.say(`happen.does.${event.kind}`), ...said]
      : [words.say("happen.does.taken-back"), ...said.map((line) => words.say("happen.would", { line }))],
    facts: [],
    table: null,
    open: null,
  };
}

function historyPart(words: Words, { changes, tracks, dayOf }: EventSource): HappenPart {
  return {
    margin: words.say("happen.event.history"),
    explains: words.say("happen.event.history.explains"),
    heading: words.say("happen.event.history.heading", { changes: changes.length }),
    paragraphs: [],
    facts: [],
    table: {
      caption: words.say("happen.event.history.caption"),
      columns: ["when", "before", "after", "who", "why"].map((column) => ({
        label: words.say(`happen.event.history.${column}`),
        align: "start" as const,
      })),
      rows: [...changes].reverse().map((change) => ({
        cells: [
          sayDay(words, dayOf(change.changedAt), "day-year"),
          namesOf(words, change.before, tracks),
          namesOf(words, change.after, tracks),
          change.who,
          change.why === "" ? words.say("pain.why-kept") : change.why,
        ],
        tone: "plain" as const,
      })),
    },
    open: null,
  };
}

/** One event: what it is, what it does, and every change of that. */
export function buildEventPage(words: Words, source: EventSource): HappenPage {
  const { student, event, dayOf } = source;
  const page = `/students/${student.id}/events`;
  const kind = words.say(`event.${event.kind}`);
  const fact = (name: string, value: string): Fact[] =>
    value === "" ? [] : [{ name: words.say(`happen.events.${name}`), value, note: "" }];
  return {
    title: words.say(event.voidedAt === null ? "happen.event.title" : "happen.event.title-back", {
      kind,
      days: sayEventDays(words, event),
      alias: student.alias,
    }),
    documentTitle: words.say("document-title", { page: words.say("happen.event.document-title") }),
    lede: "",
    back: { href: page, label: words.say("happen.event.back", { alias: student.alias }) },
    actions:
      event.voidedAt === null
        ? [{ href: `${page}/new?instead=${event.id}`, label: words.say("happen.event.correct") }]
        : [],
    parts: [
      {
        margin: words.say("happen.event.what"),
        explains: "",
        heading: words.say("happen.event.heading"),
        paragraphs: [],
        facts: [
          ...fact("days", sayEventDays(words, event)),
          ...fact("more", sayEventMore(words, event)),
          ...fact("recorded", sayRecorded(words, event, dayOf)),
        ],
        table: null,
        open: null,
      },
      anewPart(words, source),
      ...(source.changes.length === 0 ? [] : [historyPart(words, source)]),
    ],
    cautions: ["injury", "pause"].includes(event.kind) ? cautionsFor(words, student, source.today) : [],
  };
}
