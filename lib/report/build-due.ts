import { daysBetween } from "@/lib/domain/calendar-day";
import type { FilmPlan } from "@/lib/domain/film-plan";
import type { Fundamental, View } from "@/lib/domain/fundamental";
import type { Hand } from "@/lib/domain/handedness";
import type { Words } from "@/lib/words/catalogue";
import { sayDay } from "@/lib/words/day-words";
import { askVideos } from "./ask-videos";
import type { Link, TableModel } from "./basic-model";
import { buildAskText } from "./build-ask-text";
import { copyText } from "./build-plan";
import { sayAsked } from "./build-told-plans";
import { planHref } from "./plan-href";
import type { CopyText, PressModel } from "./plan-model";

/** A film that was promised and hasn't come, with whom it is of. */
export interface DueFilm extends Pick<FilmPlan, "clubGroup" | "madeOn" | "dueOn" | "body" | "remindedAt"> {
  readonly planId: string;
  readonly studentId: string;
  readonly alias: string;
  readonly hand: Hand;
  /** In which the family is told. */
  readonly family: Words;
  /** With which clubs, finished for a family. */
  readonly club: string;
}

/** What the list of what is due rests on. */
export interface DueSource {
  /** The longest awaited first. */
  readonly films: readonly DueFilm[];
  readonly fundamentals: readonly Fundamental[];
  readonly today: string;
  readonly dayOf: (instant: string) => string;
}

/** The list of what is due, as a page. */
export interface DuePage {
  readonly documentTitle: string;
  readonly title: string;
  readonly lede: string;
  readonly back: Link;
  readonly films: { readonly margin: string; readonly heading: string; readonly table: TableModel | null };
  readonly reminders: {
    readonly margin: string;
    readonly explains: string;
    readonly heading: string;
    readonly items: readonly {
      readonly planId: string;
      readonly heading: string;
      readonly said: string;
      readonly plan: Link;
      readonly message: CopyText;
      readonly press: PressModel;
    }[];
  } | null;
  /** Drills that are to be measured again; null or absent: none is. */
  readonly drills?: { readonly margin: string; readonly heading: string; readonly table: TableModel | null } | null;
}

function sayReminded(words: Words, { dayOf }: DueSource, { remindedAt }: DueFilm): string {
  return remindedAt === null ? "" : sayDay(words, dayOf(remindedAt), "short");
}

function filmTable(words: Words, source: DueSource): TableModel {
  return {
    caption: words.say("due.films.caption"),
    columns: (["student", "due", "late", "what", "told", "reminded"] as const).map((column) => ({
      label: words.say(`due.column.${column}`),
      align: column === "late" ? ("end" as const) : ("start" as const),
    })),
    rows: source.films.map((film) => ({
      href: planHref(film.studentId, { club: film.clubGroup }),
      cells: [
        film.alias,
        sayDay(words, film.dueOn, "with-weekday"),
        String(daysBetween(film.dueOn, source.today)),
        sayAsked(words, film, source.fundamentals),
        sayDay(words, film.madeOn, "short"),
        sayReminded(words, source, film),
      ],
      tone: film.remindedAt === null ? ("plain" as const) : ("quiet" as const),
    })),
  };
}

/** A reminder without blame, ready to be copied; it asks for what the message asked for. */
function reminder({ fundamentals }: DueSource, { body, family, ...film }: DueFilm): string {
  const viewOf = new Map<string, View>(fundamentals.map(({ id, view }) => [id, view]));
  const read = body?.fundamentals.map(({ id, swings }) => ({ view: viewOf.get(id) ?? null, swings }));
  return buildAskText(family, {
    ...{ kind: "remind", alias: film.alias, hand: film.hand, club: film.club, dueOn: film.dueOn },
    videos: askVideos(body?.views ?? [], read ?? []),
    ...{ care: [], fundamentals: [] },
  }).text;
}

function reminders(words: Words, source: DueSource): DuePage["reminders"] {
  if (source.films.length === 0) return null;
  return {
    margin: words.say("due.margin.remind"),
    explains: words.say("due.remind.explains"),
    heading: words.say("due.remind.heading", { films: source.films.length }),
    items: source.films.map((film) => ({
      planId: film.planId,
      heading: words.say("due.remind.who", { alias: film.alias, day: sayDay(words, film.dueOn, "with-weekday") }),
      said: film.remindedAt === null ? "" : words.say("due.reminded.on", { day: sayReminded(words, source, film) }),
      plan: { href: planHref(film.studentId, { club: film.clubGroup }), label: words.say("due.remind.plan") },
      message: copyText(words, reminder(source, film), film.family),
      press: {
        label: words.say("due.reminded.of", { alias: film.alias }),
        hidden: { studentId: film.studentId, planId: film.planId },
      },
    })),
  };
}

/** The films that were promised and haven't come, each with a ready reminder. */
export function buildDuePage(words: Words, source: DueSource): DuePage {
  const { films } = source;
  return {
    documentTitle: words.say("document-title", { page: words.say("due") }),
    title: words.say("due.title", { films: films.length }),
    lede: words.say("due.lede"),
    back: { href: "/students", label: words.say("due.back") },
    films: {
      margin: words.say("due.margin.films"),
      heading: words.say("due.films.heading", { films: films.length }),
      table: films.length === 0 ? null : filmTable(words, source),
    },
    reminders: reminders(words, source),
  };
}
