import { dayNumber } from "@/lib/domain/calendar-day";
import type { ClubGroup } from "@/lib/domain/club-group";
import type { ClubGrouping } from "@/lib/domain/club-grouping";
import type { Edges, Fundamental } from "@/lib/domain/fundamental";
import { type FairFilm, fairTestValue } from "@/lib/drills/fair-test-value";
import type { Words } from "@/lib/words/catalogue";
import { sayDay } from "@/lib/words/day-words";
import { sayNumber, saySigned, withUnit } from "@/lib/words/number-words";
import { sayClubGroup } from "@/lib/words/say-club";
import { sayFundamental } from "@/lib/words/say-fundamental";
import { valueTicks } from "./axis";
import type { DrillSeasonsPage, SeasonsChart } from "./drill-seasons-model";
import { spreadHref } from "./spread-source";
import { valueRange } from "./value-range";

/** Days before the first day on a drill, and after it, that are drawn. Own choice: films of a season's half on either side. */
const DRAWN = { before: 84, after: 168 } as const;
const WEEK = 7;
const WEEKS = [-8, 0, 8, 16, 24] as const;

/** One student on the drill for the first time. */
export interface DrillSeason {
  readonly studentId: string;
  readonly alias: string;
  readonly start: string;
  /** Last day; null: it runs. */
  readonly end: string | null;
  /** Days of practice that are logged. */
  readonly logged: number;
  readonly films: readonly FairFilm[];
  /** The band of the first day. */
  readonly goal: Edges;
}

/** What the page of one drill rests on. */
export interface DrillSeasonsSource {
  readonly drill: { readonly id: string; readonly name: string };
  readonly fundamental: Fundamental;
  /** Null: nobody is measured. */
  readonly clubGroup: ClubGroup | null;
  readonly grouping: ClubGrouping;
  readonly groups: readonly ClubGroup[];
  /** By first day. */
  readonly seasons: readonly DrillSeason[];
  /** How many were given it and are not measured with these clubs. */
  readonly unmeasured: number;
}

const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;

function lineOf({ studentId, start, end, films }: DrillSeason): SeasonsChart["lines"][number] {
  const first = dayNumber(start);
  const last = end === null ? Number.POSITIVE_INFINITY : dayNumber(end) + DRAWN.after;
  const dots = films.flatMap(({ date, use, swings }) => {
    const at = dayNumber(date) - first;
    const isDrawn = use && swings.length > 0 && at >= -DRAWN.before && at <= DRAWN.after && dayNumber(date) <= last;
    return isDrawn ? [{ at, value: mean(swings) }] : [];
  });
  return { id: studentId, dots };
}

function chartOf(words: Words, { seasons, fundamental, drill }: DrillSeasonsSource): SeasonsChart {
  const lines = seasons.map(lineOf).filter(({ dots }) => dots.length > 0);
  const goals = new Set(seasons.map(({ goal }) => `${goal.low} ${goal.high}`));
  const [first] = seasons;
  const band = goals.size === 1 && first !== undefined ? first.goal : null;
  const edges = [band?.low, band?.high].flatMap((edge) => (typeof edge === "number" ? [edge] : []));
  const { low, high } = valueRange([...edges, ...lines.flatMap(({ dots }) => dots.map(({ value }) => value))]);
  const ticks = valueTicks(low, high, 5, (value, decimals) => sayNumber(words, value, decimals));
  return {
    sentence: words.say("drill-seasons.sentence", {
      students: lines.length,
      drill: drill.name,
      name: sayFundamental(words, fundamental),
    }),
    ...{ from: -DRAWN.before, to: DRAWN.after, low, high, ticks, band, lines },
    weeks: WEEKS.map((week) => ({
      at: week * WEEK,
      label: words.say("drill-seasons.week", { week: saySigned(words, week, 0) }),
    })),
    begins: words.say("drill-seasons.begins"),
  };
}

/** The page of one drill: who had it, their seasons moved to one first day, and what came before and after. It proves nothing, and says so. */
export function buildDrillSeasons(words: Words, source: DrillSeasonsSource): DrillSeasonsPage {
  const { drill, fundamental, clubGroup, grouping, groups, seasons, unmeasured } = source;
  const name = sayFundamental(words, fundamental);
  const level = (value: number): string => withUnit(words, sayNumber(words, value, 1), fundamental.unit);
  const rows = seasons.map((season) => {
    const found = fairTestValue(season.films, season.goal, { from: season.start, days: DRAWN.after });
    return {
      href: `/students/${season.studentId}/${fundamental.id}${clubGroup === null ? "" : `?club=${clubGroup}`}`,
      cells: [
        season.alias,
        sayDay(words, season.start, "day-year"),
        season.end === null ? words.say("drill-seasons.runs") : sayDay(words, season.end, "day-year"),
        String(season.logged),
        found.kind === "ok" ? level(found.before) : words.say("drill-seasons.none"),
        found.kind === "ok" ? level(found.after) : words.say("drill-seasons.none"),
        found.kind === "ok"
          ? withUnit(words, saySigned(words, found.value, 1), fundamental.unit)
          : words.say(`drill-seasons.${found.kind}`),
      ],
      tone: found.kind === "ok" ? ("plain" as const) : ("quiet" as const),
    };
  });
  return {
    documentTitle: words.say("document-title", { page: words.say("drill-seasons") }),
    title: words.say("drill-seasons.title", { drill: drill.name, students: seasons.length }),
    lede: words.say("drill-seasons.lede", { name, unmeasured }),
    back: { href: `/drills?for=${fundamental.id}`, label: words.say("compared.link.open") },
    ways: [
      { href: spreadHref(fundamental.id), label: words.say("spread.link", { name }) },
      { href: `/drills/${encodeURIComponent(drill.id)}/change`, label: words.say("library.change") },
    ],
    clubs:
      groups.length < 2
        ? null
        : {
            label: words.say("club.choose"),
            links: groups.map((group) => ({
              href: `/drills/${encodeURIComponent(drill.id)}?club=${group}`,
              label: sayClubGroup(words, grouping, group),
              current: group === clubGroup ? ("yes" as const) : ("no" as const),
            })),
          },
    seasons:
      seasons.length === 0
        ? null
        : {
            margin: words.say("drill-seasons.margin"),
            explains: words.say("drill-seasons.explains"),
            heading: words.say("drill-seasons.heading"),
            chart: chartOf(words, source),
            table: {
              caption: words.say("drill-seasons.caption"),
              columns: (["student", "from", "to", "logged", "before", "after", "nearer"] as const).map((column) => ({
                label: words.say(`drill-seasons.column.${column}`),
                align:
                  column === "student" || column === "from" || column === "to" ? ("start" as const) : ("end" as const),
              })),
              rows,
            },
          },
    care: {
      margin: words.say("drill-seasons.care"),
      lines: [words.say("drill-seasons.no-proof"), words.say("drill-seasons.aligned")],
    },
  };
}
