import type { Words } from "@/lib/words/catalogue";
import { sayDay } from "@/lib/words/day-words";
import type { Fact, TableModel } from "./basic-model";
import { buildCsv } from "./csv";
import { sayLookPlace } from "./look-place";
import type { LookedPage } from "./looked-model";
import { buildPrivacyLinks } from "./privacy-links";

/** One look at the record, with the day and the time of day where the academy is. */
export interface LookedAt {
  readonly who: string;
  readonly role: string;
  readonly what: "page" | "file" | "print";
  readonly place: string;
  readonly at: string;
  readonly day: string;
  readonly time: string;
}

/** Everything that the page rests on. */
export interface LookedSource {
  readonly student: { readonly id: string; readonly alias: string };
  readonly today: string;
  /** Latest first. */
  readonly looks: readonly LookedAt[];
  /** Wished page of the list, from 1. */
  readonly page: string | undefined;
}

/** Lines on one page of the list: some weeks of one coach's work, and few enough to be read. */
const PAGE_SIZE = 40;

const KINDS = ["page", "print", "file"] as const;

/** Looks of one person, as one thing, together. */
interface Group {
  readonly who: string;
  readonly role: string;
  readonly looks: LookedAt[];
}

/** In the order of their first; groups with the same key are one. */
function grouped(looks: readonly LookedAt[], keyOf: (look: LookedAt) => string): Group[] {
  const groups = new Map<string, Group>();
  for (const look of looks) {
    const key = JSON.stringify([keyOf(look), look.who, look.role]);
    const group = groups.get(key);
    if (group) group.looks.push(look);
    else groups.set(key, { who: look.who, role: look.role, looks: [look] });
  }
  return [...groups.values()];
}

const sayRole = (words: Words, role: string): string => words.say(`looked.role.${role}`);

/** What was opened, how often, in the order of the latest: pages first, then what was for paper, then files. */
function sayOpened(words: Words, looks: readonly LookedAt[]): string {
  const said = KINDS.flatMap((kind) => {
    const counts = new Map<string, number>();
    for (const { place } of looks.filter((look) => look.what === kind)) {
      const name = sayLookPlace(words, place);
      counts.set(name, (counts.get(name) ?? 0) + 1);
    }
    const places = [...counts].map(([what, times]) => words.say("looked.times", { what, times })).join(", ");
    return counts.size === 0 ? [] : [words.say(`looked.what.${kind}`, { places })];
  });
  return said.join("; ");
}

function sayTimes(words: Words, looks: readonly LookedAt[]): string {
  const [from, to] = [looks.at(-1)?.time ?? "", looks[0]?.time ?? ""];
  return from === to ? to : words.say("looked.from-to", { from, to });
}

/** What everybody did, in figures. */
function sumOf({ looks }: Group) {
  const of = (what: LookedAt["what"]): number => looks.filter((look) => look.what === what).length;
  const days = new Set(looks.map((look) => look.day)).size;
  return { days, looks: looks.length, files: of("file"), prints: of("print"), last: looks[0]?.day ?? "" };
}

function factOf(words: Words, group: Group): Fact {
  const { last, ...counts } = sumOf(group);
  return {
    name: words.say("looked.person", { who: group.who, role: sayRole(words, group.role) }),
    value: words.say("looked.person.days", { ...counts, last: sayDay(words, last, "day-year") }),
    note: counts.files + counts.prints === 0 ? "" : words.say("looked.person.out", counts),
  };
}

/** Plain lines for a family: who, as what, on how many days, the last one, and what went out. */
function messageOf(words: Words, { student, today, looks }: LookedSource, people: readonly Group[]): string {
  const day = sayDay(words, today, "day-year");
  const first = looks.at(-1);
  if (first === undefined) return words.say("looked.message.none", { alias: student.alias, day });
  const since = sayDay(words, first.day, "day-year");
  const lines = people.map((group) => {
    const { last, ...counts } = sumOf(group);
    const role = words.say(`looked.message.role.${group.role}`);
    return words.say("looked.message.line", { who: group.who, role, ...counts, last: sayDay(words, last, "day-year") });
  });
  return [
    words.say("looked.message.head", { alias: student.alias, days: since === day ? "one" : "several", since, day }),
    ...lines,
    words.say("looked.message.end"),
  ].join("\n");
}

function tableOf(words: Words, groups: readonly Group[], studentId: string): TableModel {
  const columns = ["day", "who", "as", "what", "when"].map((name) => ({
    label: words.say(`looked.column.${name}`),
    align: "start" as const,
  }));
  return {
    caption: words.say("looked.caption"),
    columns,
    rows: groups.map(({ who, role, looks }) => ({
      tone: "plain",
      cells: [
        sayDay(words, looks[0]?.day ?? "", "full"),
        who,
        sayRole(words, role),
        sayOpened(words, looks),
        sayTimes(words, looks),
      ],
    })),
    download: { href: `/api/students/${studentId}/looked/csv`, label: words.say("looked.download") },
  };
}

/** Who looked at a student's record: everybody in a line, day by day, and in words for the family. */
export function buildLooked(words: Words, source: LookedSource): LookedPage {
  const { student, looks } = source;
  const say = (key: string, args = {}): string => words.say(`looked.${key}`, args);
  const people = grouped(looks, () => "");
  const groups = grouped(looks, (look) => look.day);
  const pageCount = Math.max(1, Math.ceil(groups.length / PAGE_SIZE));
  const wished = /^\d{1,6}$/.test(source.page ?? "") ? Number(source.page) : 1;
  const page = wished >= 1 && wished <= pageCount ? wished : 1;
  const shown = groups.slice((page - 1) * PAGE_SIZE, page * PAGE_SIZE);
  const address = `/students/${student.id}`;
  const all = Array.from({ length: pageCount }, (_, at) => at + 1);
  return {
    title: say("title", { alias: student.alias }),
    lede: say("lede"),
    back: { href: address, label: words.say("fundamental-page.back", { alias: student.alias }) },
    people: {
      margin: say("people.margin"),
      heading: say("people.heading", { people: people.length, looks: looks.length }),
      facts: people.map((group) => factOf(words, group)),
    },
    days: {
      margin: say("days.margin"),
      heading: say("days.heading"),
      explains: say("days.explains"),
      table: groups.length === 0 ? null : tableOf(words, shown, student.id),
      none: say("none"),
      pages:
        pageCount === 1
          ? null
          : {
              label: say("pages"),
              links: all.map((n) => ({
                label: String(n),
                href: `${address}/looked?page=${n}`,
                current: n === page ? "yes" : "no",
              })),
            },
    },
    message: {
      margin: say("message.margin"),
      heading: say("message.heading"),
      label: say("message.label"),
      hint: say("message.hint"),
      text: messageOf(words, source, people),
    },
    limits: {
      margin: say("limits.margin"),
      heading: say("limits.heading"),
      paragraphs: ["lists", "minute", "machine", "print"].map((key) => say(`limits.${key}`)),
    },
    links: { label: words.say("privacy.links"), items: buildPrivacyLinks(words, student.id, "looked") },
  };
}

/** Every single look as a file, latest first. */
export function buildLookedCsv(words: Words, looks: readonly LookedAt[]): string {
  return buildCsv(
    ["at", "who", "as", "what", "opened", "place"],
    looks.map(({ at, who, role, what, place }) => [at, who, role, what, sayLookPlace(words, place), place]),
  );
}
