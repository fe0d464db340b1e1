import type { CalendarDay } from "@/lib/domain/calendar-day";
import type { Fundamental } from "@/lib/domain/fundamental";
import { SINCE_EVER } from "@/lib/domain/goal-band";
import type { Session, Squareness } from "@/lib/domain/session";
import type { Student, StudentEvent } from "@/lib/domain/student";
import type { Words } from "@/lib/words/catalogue";
import { sayDay, sayStretch } from "@/lib/words/day-words";
import { sayEventDays } from "@/lib/words/say-event";
import { sayFundamental } from "@/lib/words/say-fundamental";
import type { TableModel } from "./basic-model";
import type { SeasonChart } from "./chart-model";
import type { FundamentalPage, SeasonPage } from "./page-model";
import type { ReportedFundamental, ReportPage } from "./report-model";

/** What the report rests on: the very models of the pages, and what is counted beside them. */
export interface ReportSource {
  readonly student: Student;
  readonly today: CalendarDay;
  readonly seasonStart: CalendarDay;
  /** Name of the club group in hand; empty: none. */
  readonly clubName: string;
  readonly season: SeasonPage;
  /** In the order of work. */
  readonly fundamentals: readonly { readonly fundamental: Fundamental; readonly page: FundamentalPage }[];
  /** The sessions of the club group, by day. */
  readonly sessions: readonly Session[];
  /** Swings with a reading in those sessions. */
  readonly swings: number;
  readonly events: readonly StudentEvent[];
  /** How square the phone stood in each view of those sessions. */
  readonly views: readonly Squareness[];
  /** Sessions of the group that no fundamental counts. */
  readonly setAside: number;
}

function reported(
  words: Words,
  season: SeasonPage,
  { fundamental, page }: ReportSource["fundamentals"][number],
): ReportedFundamental {
  const { verdict, evidence, settle } = page;
  const toSettle = settle?.texts[0];
  const texts = [
    verdict.listing,
    verdict.reach,
    verdict.stays ?? "",
    verdict.watch,
    toSettle === undefined ? "" : words.say("report.fundamental.settle", { text: toSettle }),
  ];
  return {
    id: fundamental.id,
    name: sayFundamental(words, fundamental),
    position: verdict.position,
    glyph: verdict.glyph,
    heading: verdict.heading,
    facts: verdict.facts,
    texts: texts.filter((text) => text !== ""),
    chart: chartOnPaper(evidence.chart, season),
  };
}

/** The chart of its page without what stands once for all on the first sheet: practice, events, drills for another one. */
function chartOnPaper(chart: SeasonChart, season: SeasonPage): SeasonChart {
  // A drill for another fundamental is labelled so; its own has the label that the season's axis has.
  const own = new Set(season.evidence.drills?.map((ribbon) => ribbon.label));
  return { ...chart, drills: chart.drills.filter((ribbon) => own.has(ribbon.label)), events: [], practice: null };
}

const GLANCE = ["fundamental", "verdict", "level", "band", "since"] as const;

function glance(words: Words, { season, fundamentals }: ReportSource): ReportPage["glance"] {
  const rows = season.evidence.groups.flatMap((group) => group.rows);
  const days = rows[0]?.chart.x;
  if (days === undefined) return null;
  const factOf = (id: string, key: string): string => {
    const page = fundamentals.find(({ fundamental }) => fundamental.id === id)?.page;
    return page?.verdict.facts.find((fact) => fact.name === words.say(`fact.${key}`))?.value ?? "";
  };
  const { drills, events, marked, practice } = season.evidence;
  return {
    margin: words.say("report.glance.margin"),
    heading: season.evidence.heading,
    table: {
      caption: words.say("report.glance.caption"),
      columns: GLANCE.map((column) => ({ label: words.say(`report.glance.${column}`), align: "start" })),
      rows: rows.map((row) => ({
        cells: [
          row.name,
          row.word,
          row.facts.find((fact) => fact.name === words.say("fact.level-now"))?.value ?? "",
          factOf(row.fundamentalId, "band"),
          factOf(row.fundamentalId, "when"),
        ],
        tone: "plain",
      })),
    },
    axis: { days, drills, events, marked, practice },
  };
}

function eventTable(words: Words, source: ReportSource): TableModel[] {
  const events = source.events.filter(({ day }) => day <= source.today);
  if (events.length === 0) return [];
  const nameOf = (id: string): string => {
    const found = source.fundamentals.find(({ fundamental }) => fundamental.id === id);
    return found ? sayFundamental(words, found.fundamental) : id;
  };
  return [
    {
      caption: words.say("report.events.caption"),
      columns: ["days", "what", "note", "anew"].map((column) => ({
        label: words.say(`report.events.column.${column}`),
        align: "start" as const,
      })),
      // Where it hurts goes on no paper.
      rows: events.map((event) => ({
        cells: [
          sayEventDays(words, event),
          words.say(`event.${event.kind}`),
          event.note,
          event.rebaselines.map(nameOf).join(", "),
        ],
        tone: "plain" as const,
      })),
    },
  ];
}

function cameraTexts(words: Words, { views, setAside, season }: ReportSource): readonly string[] {
  if (views.length === 0) return [words.say("report.camera.none")];
  const of = (squareness: Squareness): number => views.filter((view) => view === squareness).length;
  const counts = { views: views.length, square: of("square"), off: of("off"), unknown: of("unknown") };
  return [
    words.say("report.camera.views", counts),
    words.say("report.camera.aside", { aside: setAside }),
    ...season.notices,
  ];
}

function keepTexts(words: Words, { evidence }: SeasonPage): readonly string[] {
  const rows = evidence.groups.flatMap((group) => group.rows).filter((row) => row.place === "keep");
  if (rows.length === 0) return [words.say("report.keep.none")];
  return rows.map((row) => `${row.name}: ${row.facts.map(({ value }) => value).join(" · ")}`);
}

/**
 * The season as a report for print. Every figure is the field of the season page or of the fundamental's page that says it
 * there; nothing is worked out here but counts of what was filmed.
 */
export function buildReport(words: Words, source: ReportSource): ReportPage {
  const { season, sessions, student } = source;
  const say = (key: string, args = {}): string => words.say(`report.${key}`, args);
  const [first, last] = [sessions[0]?.day, sessions.at(-1)?.day];
  const day = sayDay(words, source.today, "full");
  const counts = { sessions: sessions.length, swings: source.swings };
  return {
    title: say("title", { alias: student.alias }),
    lede:
      first === undefined || last === undefined
        ? say("lede.empty", { day })
        : say("lede", {
            stretch: sayStretch(words, first, last),
            year: sayDay(words, last, "year"),
            club: source.clubName,
            day,
          }),
    counts:
      source.seasonStart === SINCE_EVER
        ? say("sessions.no-start", counts)
        : say("sessions", { ...counts, start: sayDay(words, source.seasonStart, "day-year") }),
    back: { href: `/students/${student.id}`, label: say("back") },
    print: say("print"),
    next: season.next,
    proved: season.proved,
    glance: glance(words, source),
    fundamentals: {
      margin: say("fundamentals.margin"),
      heading: say("fundamentals.heading", { count: source.fundamentals.length }),
      explains: say("fundamentals.explains"),
      items: source.fundamentals.map((entry) => reported(words, season, entry)),
    },
    keep: { margin: say("keep.margin"), heading: say("keep.heading"), texts: keepTexts(words, season) },
    contact:
      season.contact === null
        ? null
        : {
            ...season.contact,
            // The counts by session are looked up on the season's page, which has them as a file.
            table: null,
            download: null,
            judged: season.contact.judged === null ? null : { ...season.contact.judged, files: null },
          },
    events: {
      margin: say("events.margin"),
      heading: say("events.heading"),
      tables: [...eventTable(words, source), ...(season.drills === null ? [] : [season.drills])],
      none: say("events.none"),
    },
    camera: { margin: say("camera.margin"), heading: say("camera.heading"), texts: cameraTexts(words, source) },
    settle: season.settle,
    method: {
      margin: say("method.margin"),
      heading: say("method.heading"),
      texts: [say("method.text"), words.say("detail.promise"), say("method.open"), say("method.tables")],
    },
    cautions: { margin: say("care.margin"), texts: season.cautions },
  };
}
