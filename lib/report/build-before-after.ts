import { dayNumber } from "@/lib/domain/calendar-day";
import type { Interval, TrackVerdict } from "@/lib/domain/track-verdict";
import type { TrackHistory } from "@/lib/verdict/track-history";
import { decidePosition } from "@/lib/verdict/worth";
import type { Words } from "@/lib/words/catalogue";
import { sayStretch } from "@/lib/words/day-words";
import { decimalsFor, halfWidth, sayLevel, sayNumber, withUnit } from "@/lib/words/number-words";
import { sayPosition } from "@/lib/words/say-verdict";
import type { FundamentalPage } from "./page-model";
import { drawnChanges } from "./said";
import { spanOf } from "./span-of";

/** The levels of a season one under the other, with the days of each and what was counted in them; null without a proved change. */
export function buildBeforeAfter(
  words: Words,
  history: TrackHistory,
  verdict: TrackVerdict,
): FundamentalPage["beforeAfter"] {
  const changes = drawnChanges(verdict);
  const used = history.sessions.filter((entry) => entry.apart === null);
  const first = used[0]?.session.day;
  const last = used.at(-1)?.session.day;
  if (changes.length === 0 || !first || !last || verdict.levelNow === null) return null;
  const periods = changes.map(({ change }, place) => ({
    from: place === 0 ? first : (changes[place - 1]?.change.to ?? first),
    to: change.from,
    level: change.before,
  }));
  periods.push({ from: changes.at(-1)?.change.to ?? first, to: last, level: verdict.levelNow });
  const { low, high } = history.goal;
  const counted = (from: string, to: string): string => {
    const swings = used
      .filter(
        (entry) => dayNumber(entry.session.day) >= dayNumber(from) && dayNumber(entry.session.day) <= dayNumber(to),
      )
      .flatMap((entry) => entry.swings.map((swing) => swing.value));
    const inside = swings.filter((value) => (low === null || value >= low) && (high === null || value <= high)).length;
    return words.say("count.of", { count: inside, of: swings.length });
  };
  return {
    margin: words.say("fundamental-page.margin.before-after"),
    heading: words.say("before-after.heading", {
      levels: periods.length,
      list: periods.map(({ level }) => sayEstimate(words, level, history)).join(words.say("before-after.then")),
    }),
    table: {
      caption: words.say("before-after.caption"),
      columns: [
        { label: words.say("before-after.days"), align: "start" },
        { label: words.say("before-after.level"), align: "end" },
        { label: words.say("before-after.read-inside"), align: "end" },
      ],
      rows: periods.map((period) => ({
        cells: [
          sayStretch(words, period.from, period.to),
          sayLevel(words, period.level, history.fundamental.unit),
          counted(period.from, period.to),
        ],
        tone: "plain" as const,
      })),
    },
    intervals: {
      label: words.say("before-after.interval"),
      ...spanOf([
        ...periods.flatMap(({ level }) => [level.low95, level.high95]),
        ...[low, high].flatMap((edge) => (edge === null ? [] : [edge])),
      ]),
      bandLow: low,
      bandHigh: high,
      rows: periods.map(({ level }) => ({
        low: level.low95,
        value: level.estimate,
        high: level.high95,
        sentence: sayPosition(
          words,
          decidePosition(level, history.goal),
          level,
          history.goal,
          history.fundamental.unit,
        ),
      })),
    },
  };
}

/** A level without its doubt, with the digits that this supports; the table beneath has both. */
function sayEstimate(words: Words, level: Interval, { fundamental }: TrackHistory): string {
  return withUnit(words, sayNumber(words, level.estimate, decimalsFor(halfWidth(level))), fundamental.unit);
}
