import { dayFromNumber, dayNumber } from "@/lib/domain/calendar-day";
import type { Words } from "@/lib/words/catalogue";
import { sayDay } from "@/lib/words/day-words";
import { decimalsFor, sayNumber, sayRange, withUnit } from "@/lib/words/number-words";
import { buildReach } from "./build-reach";
import type { ChartCurve } from "./chart-model";
import type { FundamentalSource } from "./fundamental-source";

/** The edge of the goal that a gain nears. */
function edgeAhead({ history, verdict }: Pick<FundamentalSource, "history" | "verdict">): number | null {
  const change = verdict.changes.at(-1);
  if (change === undefined) return null;
  const { low, high } = history.goal;
  return change.after.estimate >= change.before.estimate ? low : high;
}

/**
 * The learning curve as the chart draws it, with the days in which it reaches the band; null: nothing of it is said, or what is
 * said lies behind by now.
 */
export function buildReachCurve(words: Words, source: FundamentalSource): ChartCurve | null {
  const { history, verdict, reachCurve, today } = source;
  const { reach } = verdict;
  const points = reachCurve ?? [];
  const first = points[0];
  const sentence = buildReach(words, source);
  if (first === undefined || reach === null || sentence === "") return null;
  // Away, or past the last of the dates: the sentence says so, and no curve stands for a promise.
  if (reach.kind === "dates" && (reach.to < today || sentence === sayAway(words, source))) return null;
  const { unit } = history.fundamental;
  const at = edgeAhead(source);
  const decimals = Math.max(...points.map(({ low, high }) => decimalsFor((high - low) / 2)));
  const row = ({ day, middle, low, high }: ChartCurve["points"][number]) => ({
    cells: [
      sayDay(words, dayFromNumber(day), "day-year"),
      withUnit(words, sayNumber(words, middle, decimals), unit),
      sayRange(words, low, high, decimals, unit),
    ],
    tone: "plain" as const,
  });
  return {
    points,
    arrival:
      reach.kind === "dates" && at !== null
        ? {
            from: dayNumber(reach.from),
            to: dayNumber(reach.to),
            at,
            label: words.say("curve.arrival", {
              from: sayDay(words, reach.from, "short"),
              to: sayDay(words, reach.to, "short"),
            }),
          }
        : null,
    explains: words.say(reach.kind === "dates" ? "curve.explains.dates" : "curve.explains.stopped"),
    sentence,
    table: {
      caption: words.say("curve.caption"),
      columns: [
        { label: words.say("curve.day"), align: "start" },
        { label: words.say("curve.middle"), align: "end" },
        { label: words.say("curve.range"), align: "end" },
      ],
      rows: points.map(row),
    },
  };
}

function sayAway(words: Words, { history }: FundamentalSource): string {
  const last = history.sessions.filter((entry) => entry.apart === null).at(-1)?.session.day;
  return last === undefined ? "" : words.say("reach.away", { day: sayDay(words, last, "full") });
}
