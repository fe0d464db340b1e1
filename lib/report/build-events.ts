import type { FiledEvent } from "@/lib/domain/event-record";
import type { Student } from "@/lib/domain/student";
import type { Words } from "@/lib/words/catalogue";
import { sayDay } from "@/lib/words/day-words";
import { sayEventDays } from "@/lib/words/say-event";
import { cautionsFor } from "./cautions";
import type { HappenPage } from "./happen-model";

/** Everything that a student's list of events rests on. */
export interface EventsSource {
  readonly student: Student;
  readonly events: readonly FiledEvent[];
  readonly today: string;
  /** The day of an instant where the student is. */
  readonly dayOf: (instant: string) => string;
}

/** What an event says of itself beside its kind and days. */
export function sayEventMore(words: Words, event: FiledEvent): string {
  const place = event.place === null ? "" : words.say(`happen.place.${event.place}`);
  return [place, event.note].filter((part) => part !== "").join(" · ");
}

/** Who recorded something and when; empty where neither was kept. */
export function sayRecorded(
  words: Words,
  { who, recordedAt }: { readonly who: string; readonly recordedAt: string | null },
  dayOf: (instant: string) => string,
): string {
  if (recordedAt === null) return who;
  return words.say("happen.recorded", { who, day: sayDay(words, dayOf(recordedAt), "day-year") });
}

/** A student's events, latest first, what was taken back among them. */
export function buildEventsPage(words: Words, source: EventsSource): HappenPage {
  const { student, dayOf } = source;
  const page = `/students/${student.id}`;
  const events = [...source.events].reverse();
  const standing = events.filter((event) => event.voidedAt === null).length;
  return {
    title: words.say("happen.events.title", { alias: student.alias, events: standing }),
    documentTitle: words.say("document-title", { page: words.say("happen.events") }),
    lede: words.say("happen.events.lede"),
    back: { href: page, label: words.say("fundamental-page.back", { alias: student.alias }) },
    actions: [{ href: `${page}/events/new`, label: words.say("season.add-event") }],
    parts: [
      {
        margin: words.say("happen.events"),
        explains: words.say("happen.events.explains"),
        heading: words.say("happen.events.heading", { events: standing, back: events.length - standing }),
        paragraphs: events.length === 0 ? [words.say("happen.events.none")] : [],
        facts: [],
        table:
          events.length === 0
            ? null
            : {
                caption: words.say("happen.events.caption"),
                columns: ["what", "days", "more", "anew", "recorded", "state"].map((column) => ({
                  label: words.say(`happen.events.${column}`),
                  align: "start" as const,
                })),
                rows: events.map((event) => ({
                  cells: [
                    words.say(`event.${event.kind}`),
                    sayEventDays(words, event),
                    sayEventMore(words, event),
                    words.say("happen.events.tracks", { tracks: event.rebaselines.length }),
                    sayRecorded(words, event, dayOf),
                    event.voidedAt === null
                      ? words.say("happen.stands")
                      : words.say("happen.taken-back", { day: sayDay(words, dayOf(event.voidedAt), "short") }),
                  ],
                  tone: event.voidedAt === null ? ("plain" as const) : ("quiet" as const),
                })),
              },
        open:
          events.length === 0
            ? null
            : {
                label: words.say("happen.open"),
                links: events.map((event) => ({
                  href: `${page}/events/${event.id}`,
                  label: words.say("happen.open-event", {
                    kind: words.say(`event.${event.kind}`),
                    day: sayDay(words, event.day, "short"),
                  }),
                })),
              },
      },
    ],
    cautions: cautionsFor(words, student, source.today),
  };
}
