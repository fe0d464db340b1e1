import type { ClubGrouping } from "@/lib/domain/club-grouping";
import type { Fundamental } from "@/lib/domain/fundamental";
import type { StudentEvent } from "@/lib/domain/student";
import type { TrackVerdict } from "@/lib/domain/track-verdict";
import type { KnownDifference } from "@/lib/verdict/known-differences";
import type { Words } from "@/lib/words/catalogue";
import { sayDay } from "@/lib/words/day-words";
import { sayNumber, withUnit } from "@/lib/words/number-words";
import { sayFundamental } from "@/lib/words/say-fundamental";
import type { TableModel } from "./basic-model";
import type { HistoryEntry } from "./build-history";
import type { CarriedPart } from "./carried-model";
import { emptyPart, type RecordPage, type RecordPart } from "./record-page-model";
import { sayJudged } from "./say-judged";

/** A verdict and the used and unused sessions that it was reached on; null: there was nothing to judge. */
export type JudgedThen = { readonly verdict: TrackVerdict; readonly sessions: number } | null;

/** Everything that the page of what was known on a day rests on. */
export interface KnownSource {
  readonly student: { readonly id: string; readonly alias: string };
  readonly on: string;
  readonly today: string;
  readonly clubName: string;
  readonly clubGroup: string | null;
  readonly grouping: ClubGrouping;
  readonly fundamentals: readonly Fundamental[];
  /** In the order of work: as known then, for that day as known now, and now. */
  readonly tracks: readonly {
    readonly fundamental: Fundamental;
    readonly known: JudgedThen;
    readonly hindsight: JudgedThen;
    readonly now: JudgedThen;
  }[];
  readonly differences: readonly KnownDifference[];
  readonly events: readonly StudentEvent[];
  /** What was done after that day, latest first. */
  readonly since: readonly (HistoryEntry & { readonly sessionId: string | null })[];
  /** Sessions of the club group and a later day that are on file now. */
  readonly filmedSince: number;
  /** Imports that were on file that day and were taken back since; what they held can't be shown. */
  readonly gone: readonly { readonly fileName: string; readonly day: string }[];
  /** The one fundamental that is looked at; null: all. */
  readonly only: string | null;
  /** What another academy said up to that day; null or absent: nothing. */
  readonly carried?: CarriedPart | null;
}

function sayThen(words: Words, judged: JudgedThen, fundamental: Fundamental): string {
  if (judged === null) return words.say("known.nothing");
  const { verdict, sessions } = judged;
  return sayJudged(words, { verdict: { ...verdict, noChange: verdict.evidence.noChange }, sessions }, fundamental);
}

function verdictTable(words: Words, source: KnownSource): TableModel {
  const day = sayDay(words, source.on, "full");
  return {
    caption: words.say("known.caption", { club: source.clubName }),
    columns: ["fundamental", "then", "hindsight", "now"].map((name) => ({
      label: words.say(`known.column.${name}`, { day }),
      align: "start",
    })),
    rows: source.tracks.map(({ fundamental, known, hindsight, now }) => ({
      href: `/students/${source.student.id}/known?${new URLSearchParams({
        on: source.on,
        ...(source.clubGroup === null ? {} : { club: source.clubGroup }),
        fundamental: fundamental.id,
      })}`,
      cells: [
        sayFundamental(words, fundamental),
        sayThen(words, known, fundamental),
        sayThen(words, hindsight, fundamental),
        sayThen(words, now, fundamental),
      ],
      tone: "plain",
    })),
  };
}

function sayReading(words: Words, fundamental: Fundamental | undefined, value: number | null | undefined): string {
  if (value === undefined) return words.say("known.no-reading");
  if (value === null) return words.say("session-page.not-measurable");
  const number = sayNumber(words, value, Number.isInteger(value) ? 0 : 1);
  return fundamental ? withUnit(words, number, fundamental.unit) : number;
}

interface SaidDifference {
  readonly what: string;
  readonly from: string;
  readonly to: string;
}

function sayDifference(words: Words, difference: KnownDifference, source: KnownSource): SaidDifference {
  const named = (id: string): Fundamental | undefined => source.fundamentals.find((each) => each.id === id);
  const name = (id: string): string => {
    const fundamental = named(id);
    return fundamental ? sayFundamental(words, fundamental) : id;
  };
  switch (difference.kind) {
    case "value": {
      const { fundamentalId, swing, from, to } = difference;
      const fundamental = named(fundamentalId);
      return {
        what: words.say("known.value", { swing, name: name(fundamentalId) }),
        from: sayReading(words, fundamental, from),
        to: sayReading(words, fundamental, to),
      };
    }
    case "session-came":
    case "session-gone": {
      const readings = words.say("history.added.readings", { readings: difference.readings });
      const nothing = words.say("known.not-on-file");
      const came = difference.kind === "session-came";
      return {
        what: words.say(`known.${difference.kind}`),
        from: came ? nothing : readings,
        to: came ? readings : nothing,
      };
    }
    case "facts":
      return {
        what: words.say("known.facts", {
          facts: difference.facts.map((fact) => words.say(`known.fact.${fact}`)).join(", "),
        }),
        from: "",
        to: "",
      };
    case "goal":
      return { what: words.say("known.goal", { name: name(difference.fundamentalId) }), from: "", to: "" };
    case "camera":
      return { what: words.say("known.camera"), from: "", to: "" };
    default: {
      const event = source.events.find((each) => each.id === difference.eventId);
      const kind = event ? words.say(`event.${event.kind}`) : words.say("known.event");
      return { what: words.say(`known.${difference.kind}`, { kind }), from: "", to: "" };
    }
  }
}

/** Who did it, when and why, from what was done since; a row entered later has nobody's reason. */
function sayCause(words: Words, difference: KnownDifference, source: KnownSource): string {
  if (!("sessionId" in difference)) return "";
  const isCause = (entry: KnownSource["since"][number]): boolean => {
    if (difference.kind === "value")
      return entry.kind === "correction"
        ? entry.sessionId === difference.sessionId &&
            entry.swing === difference.swing &&
            entry.fundamentalId === difference.fundamentalId
        : entry.kind === "record" && touches(entry, difference.sessionId);
    return entry.kind === "record" && touches(entry, difference.sessionId);
  };
  const cause = source.since.find(isCause);
  if (!cause) return words.say(difference.kind === "session-gone" ? "known.cause.gone" : "known.cause.later");
  return words.say("known.cause", { who: cause.who, day: sayDay(words, cause.day, "full"), why: cause.why });
}

function touches(entry: Extract<KnownSource["since"][number], { kind: "record" }>, sessionId: string): boolean {
  return (
    entry.sessionId === sessionId ||
    entry.change.after.some(
      ({ table, key }) =>
        (table === "session" && key.id === sessionId) || (table === "capture" && key.session_id === sessionId),
    )
  );
}

function differencePart(words: Words, source: KnownSource): RecordPart {
  const { differences, only } = source;
  const parts = source.fundamentals.find((each) => each.id === only)?.derivedFrom ?? [only];
  const mine = differences.filter(
    (each) => only === null || !("fundamentalId" in each) || parts.includes(each.fundamentalId as never),
  );
  const day = sayDay(words, source.on, "full");
  const part = emptyPart(words.say("known.part.why"), words.say("known.why", { differences: mine.length, day }));
  const table: TableModel = {
    caption: words.say("known.why.caption", { day }),
    columns: ["session", "what", "from", "to", "cause"].map((name) => ({
      label: words.say(`known.why.column.${name}`),
      align: "start",
    })),
    rows: mine.map((difference) => {
      const said = sayDifference(words, difference, source);
      const cells = [sayDay(words, difference.day, "full"), said.what, said.from, said.to];
      return {
        cells: [...cells, sayCause(words, difference, source)],
        tone: "plain",
        ...("sessionId" in difference && difference.kind !== "session-gone"
          ? { href: `/students/${source.student.id}/sessions/${difference.sessionId}` }
          : {}),
      };
    }),
  };
  return {
    ...part,
    paragraphs: [
      words.say("known.filmed-since", { sessions: source.filmedSince, day }),
      ...source.gone.map((one) =>
        words.say("known.gone", { file: one.fileName, day, gone: sayDay(words, one.day, "full") }),
      ),
    ],
    tables: mine.length === 0 ? [] : [table],
    links: [{ href: `/students/${source.student.id}/history`, label: words.say("session-page.history") }],
  };
}

function carriedRecordPart({ margin, heading, paragraphs, table }: CarriedPart): RecordPart {
  return { ...emptyPart(margin, heading), paragraphs, tables: [table] };
}

/** What was said of a student's tracks with what was known on a day, beside what is said of that day and of today, and why they differ. */
export function buildKnown(words: Words, source: KnownSource): RecordPage {
  const { student, on, today, only, clubGroup } = source;
  const day = sayDay(words, on, "full");
  const one = source.fundamentals.find((each) => each.id === only);
  const hidden = Object.entries({
    ...(clubGroup === null ? {} : { club: clubGroup }),
    ...(one ? { fundamental: one.id } : {}),
  });
  const here = `/students/${student.id}/known`;
  return {
    title: words.say(one ? "known.title.one" : "known.title", {
      alias: student.alias,
      day,
      name: one ? sayFundamental(words, one) : "",
    }),
    documentTitle: words.say("document-title", { page: words.say("known.document-title") }),
    lede: words.say("known.lede", { day }),
    back: { href: `/students/${student.id}`, label: words.say("fundamental-page.back", { alias: student.alias }) },
    notices: [],
    ask: {
      action: here,
      name: "on",
      label: words.say("known.ask"),
      value: on,
      latest: today,
      submit: words.say("known.ask.submit"),
      hidden: hidden.map(([name, value]) => ({ name, value })),
    },
    parts: [
      {
        ...emptyPart(words.say("known.part.said"), words.say("known.said", { tracks: source.tracks.length })),
        explains: words.say("known.part.said.explains"),
        tables: source.tracks.length === 0 ? [] : [verdictTable(words, source)],
        links: one ? [{ href: `${here}?on=${on}`, label: words.say("known.all") }] : [],
      },
      ...(source.carried ? [carriedRecordPart(source.carried)] : []),
      differencePart(words, source),
    ],
  };
}
