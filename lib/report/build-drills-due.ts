import { dayNumber } from "@/lib/domain/calendar-day";
import type { DueDrill } from "@/lib/domain/drill-record";
import type { Fundamental } from "@/lib/domain/fundamental";
import type { Words } from "@/lib/words/catalogue";
import { sayDay } from "@/lib/words/day-words";
import { sayFundamental } from "@/lib/words/say-fundamental";
import type { TableModel } from "./basic-model";
import type { NotedStudents } from "./roster-model";

/** Drills whose day to be measured again has come, as a part of a page: lines that lead to the decision, and as a table. */
export interface DrillsDuePart {
  readonly margin: string;
  readonly heading: string;
  /** Those that wait longest first, each with the way to the decision. */
  readonly items: readonly { readonly href: string; readonly alias: string; readonly text: string }[];
  /** The same rows; null: none. */
  readonly table: TableModel | null;
}

const COLUMNS = ["student", "drill", "since", "due", "film"] as const;

/**
 * The drills of an academy that are to be measured again.
 *
 * @param due as `readDrillsDue` reads it
 */
export function buildDrillsDue(
  words: Words,
  source: {
    readonly due: readonly DueDrill[];
    readonly fundamentals: readonly Fundamental[];
    readonly today: string;
  },
): DrillsDuePart {
  const { due, fundamentals, today } = source;
  const rows = due.map((each) => {
    const fundamental = fundamentals.find(({ id }) => id === each.fundamentalId);
    const film =
      each.filmedOn === null
        ? words.say("drills-due.not-filmed")
        : words.say("drills-due.filmed", { day: sayDay(words, each.filmedOn, "short") });
    const when = words.say("drills-due.when", { days: dayNumber(today) - dayNumber(each.remeasureOn) });
    const since = sayDay(words, each.start, "short");
    const name = fundamental ? sayFundamental(words, fundamental) : words.say("season.drills.other");
    return {
      href: `/students/${each.studentId}/drills/${encodeURIComponent(each.assignmentId)}/decide`,
      alias: each.alias,
      text: words.say("drills-due.row", { drill: each.drill, name, since, when, film }),
      cells: [each.alias, each.drill, since, when, film],
    };
  });
  return {
    margin: words.say("drills-due.margin"),
    heading: words.say("drills-due.heading", { count: rows.length }),
    items: rows.map(({ href, alias, text }) => ({ href, alias, text })),
    table:
      rows.length === 0
        ? null
        : {
            caption: words.say("drills-due.caption"),
            columns: COLUMNS.map((column) => ({ label: words.say(`drills-due.column.${column}`), align: "start" })),
            rows: rows.map(({ href, cells }) => ({ href, cells, tone: "plain" })),
          },
  };
}

/** Drills that the roster names one by one; the list of what is due has them all. */
const NAMED = 5;

/** The same for the roster: the first few of them; null: none is due. */
export function noteDrillsDue(words: Words, { margin, heading, items }: DrillsDuePart): NotedStudents | null {
  if (items.length === 0) return null;
  return {
    ...{ margin, heading },
    items: items.slice(0, NAMED).map(({ href, alias, text }) => ({ student: { href, label: alias }, text })),
    more: items.length > NAMED ? words.say("drills-due.more", { more: items.length - NAMED }) : "",
  };
}
