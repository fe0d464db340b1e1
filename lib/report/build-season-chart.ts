import { dayFromNumber, dayNumber } from "@/lib/domain/calendar-day";
import type { Practice } from "@/lib/domain/practice";
import type { DrillAssignment, StudentEvent } from "@/lib/domain/student";
import type { ProvedChange, TrackVerdict } from "@/lib/domain/track-verdict";
import { sessionSd } from "@/lib/verdict/session-sd";
import type { HistorySession, TrackHistory } from "@/lib/verdict/track-history";
import type { Words } from "@/lib/words/catalogue";
import { sayDay, sayStretch } from "@/lib/words/day-words";
import { decimalsFor, sayBand, sayLevel, sayNumber, withUnit } from "@/lib/words/number-words";
import { sayApart } from "@/lib/words/say-apart";
import { sayFundamental } from "@/lib/words/say-fundamental";
import { sayHappened, saySize } from "@/lib/words/say-verdict";
import { monthTicks, valueTicks } from "./axis";
import type { ChartBand, ChartChange, ChartCurve, ChartLevel, ChartSession, SeasonChart } from "./chart-model";
import { eventRibbons, sayRibbons } from "./event-ribbons";
import { practiceLanes } from "./practice-lanes";
import { changeKey, changeTone, type DrawnChange, drawnChanges, saidVerdict } from "./said";
import { valueRange } from "./value-range";

/** Everything that one season chart draws. */
export interface ChartSource {
  readonly history: TrackHistory;
  readonly verdict: TrackVerdict;
  readonly drills: readonly DrillAssignment[];
  readonly events: readonly StudentEvent[];
  /** Last day of the time axis. */
  readonly asOf: string;
  /** Practice logged, taken back or not; absent: none is drawn. */
  readonly practice?: readonly Practice[];
  /** The learning curve; null or absent: none is drawn. */
  readonly curve?: ChartCurve | null;
  /** First day of the time axis, where several charts share one; null: the track's own first session. */
  readonly from: string | null;
}

/** The season chart of one track. Every number is the verdict's or a reading; nothing is estimated here. */
export function buildSeasonChart(words: Words, source: ChartSource): SeasonChart {
  const { history, verdict } = source;
  const unit = history.fundamental.unit;
  const sessions = history.sessions.map((entry) => chartSession(words, history, verdict, entry));
  const changes = drawnChanges(verdict);
  const levels = chartLevels(words, history, verdict, changes);
  const firstDay = source.from ?? history.sessions[0]?.session.day ?? source.asOf;
  const curve = source.curve ?? null;
  const start = dayNumber(firstDay);
  const end = Math.max(dayNumber(source.asOf), start + 1, curve?.points.at(-1)?.day ?? start);
  // A little air, so that no session stands on an axis.
  const air = Math.max(1, Math.round((end - start) * 0.02));
  const x = { from: start - air, to: end + air };
  const y = valueRange([
    ...sessions.flatMap((session) => [session.low, session.high, ...session.swings]),
    ...[...levels, ...(curve?.points ?? [])].flatMap((level) => [level.low, level.high]),
    ...history.goals.flatMap((goal) => [goal.low, goal.high]).filter((edge) => edge !== null),
  ]);
  const chartChanges = changes.map((drawn) => chartChange(words, history, drawn));
  const heading = chartHeading(words, changes.length, history);
  const practice = practiceLanes(words, source.practice ?? [], { first: firstDay, last: source.asOf });
  const events = eventRibbons(words, source.events, { first: firstDay, last: source.asOf });
  const said = [
    summary(words, heading, history, verdict, changes),
    curve?.sentence ?? "",
    sayRibbons(words, events),
    practice?.summary ?? "",
  ].filter((part) => part !== "");
  return {
    heading,
    summary: said.join(" "),
    unitLabel: words.say(`unit.${unit}.short`),
    bandLabel: words.say("chart.goal-band"),
    levelLabel: words.say("chart.level"),
    x: { ...x, ticks: monthTicks(words, dayFromNumber(x.from), dayFromNumber(x.to), 9) },
    y: {
      ...y,
      ticks: valueTicks(y.low, y.high, 6, (value, decimals) =>
        withUnit(words, sayNumber(words, value, decimals), unit),
      ),
    },
    bands: chartBands(words, history, x),
    sessions,
    levels,
    changes: chartChanges,
    drills: source.drills
      .filter((drill) => drill.start <= source.asOf && (drill.end ?? source.asOf) >= firstDay)
      .map((drill) => ({
        from: Math.max(x.from, dayNumber(drill.start)),
        to: Math.min(x.to, dayNumber(drill.end ?? source.asOf)),
        label:
          drill.fundamentalId === history.fundamental.id
            ? drill.drill
            : words.say("chart.drill-for-other", { drill: drill.drill }),
      })),
    events,
    curve,
    practice,
  };
}

function chartSession(words: Words, history: TrackHistory, verdict: TrackVerdict, entry: HistorySession): ChartSession {
  const unit = history.fundamental.unit;
  const values = entry.swings.map((swing) => swing.value);
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  const half = 1.96 * sessionSd(history, verdict, entry);
  const decimals = decimalsFor(half);
  const reason = entry.apart === null ? "" : sayApart(words, entry.apart);
  const meanLabel = withUnit(words, sayNumber(words, mean, 1), unit);
  const doubtLabel = withUnit(words, words.say("number.half-only", { half: sayNumber(words, half, decimals) }), unit);
  const dateLabel = sayDay(words, entry.session.day, "with-weekday");
  return {
    day: dayNumber(entry.session.day),
    mean,
    low: mean - half,
    high: mean + half,
    swings: values,
    mark: entry.apart === null ? "used" : entry.apart.kind === "circumstance" ? "aided" : "set-aside",
    dateLabel,
    meanLabel,
    doubtLabel,
    reason,
    sentence: words.say(reason === "" ? "chart.session" : "chart.session-apart", {
      day: dateLabel,
      mean: meanLabel,
      doubt: doubtLabel,
      swings: values.length,
      reason,
    }),
  };
}

function chartLevels(
  words: Words,
  history: TrackHistory,
  verdict: TrackVerdict,
  changes: readonly DrawnChange[],
): ChartLevel[] {
  const unit = history.fundamental.unit;
  const judged = history.sessions.filter((entry) => entry.index !== null && entry.apart === null);
  const first = judged[0];
  const last = judged.at(-1);
  if (!first || !last || verdict.levelNow === null) return [];
  const level = (from: number, to: number, value: ProvedChange["before"], standing: "proved" | "open"): ChartLevel => ({
    from,
    to,
    value: value.estimate,
    low: value.low95,
    high: value.high95,
    standing,
    label: sayLevel(words, value, unit),
  });
  const start = dayNumber(first.session.day);
  const end = dayNumber(last.session.day);
  if (changes.length === 0)
    return [level(start, end, verdict.levelNow, saidVerdict(verdict) === "steady" ? "proved" : "open")];
  const levels: ChartLevel[] = [];
  let from = start;
  changes.forEach(({ change, standing }, place) => {
    const drawn = standing === "listed" ? "proved" : "open";
    levels.push(level(from, Math.max(from, dayNumber(change.from)), change.before, drawn));
    from = Math.min(end, dayNumber(change.to));
    if (place === changes.length - 1) levels.push(level(from, end, verdict.levelNow ?? change.after, drawn));
  });
  return levels;
}

function chartChange(words: Words, history: TrackHistory, drawn: DrawnChange): ChartChange {
  const { change, standing } = drawn;
  const size = saySize(words, change, history.fundamental.unit);
  return {
    from: dayNumber(change.from),
    to: dayNumber(change.to),
    direction: changeTone(drawn),
    before: change.before.estimate,
    after: change.after.estimate,
    afterLow: change.after.low95,
    afterHigh: change.after.high95,
    label:
      standing === "alone"
        ? words.say("chart.change-alone", { size })
        : words.say("chart.change", { word: words.say(changeKey(change)), size }),
    daysLabel: sayHappened(words, change),
  };
}

/** Every goal band that was in force on the axis, each over its own days. */
function chartBands(words: Words, history: TrackHistory, x: { from: number; to: number }): readonly ChartBand[] {
  const edge = (value: number): string =>
    withUnit(words, sayNumber(words, value, Number.isInteger(value) ? 0 : 1), history.fundamental.unit);
  return history.goals.map(({ low, high, from }, place) => {
    const next = history.goals[place + 1];
    return {
      from: place === 0 ? x.from : Math.max(x.from, dayNumber(from)),
      to: next === undefined ? x.to : Math.min(x.to, dayNumber(next.from)),
      low,
      high,
      lowLabel: low === null ? null : edge(low),
      highLabel: high === null ? null : edge(high),
    };
  });
}

function chartHeading(words: Words, changes: number, history: TrackHistory): string {
  const apart = history.sessions.filter((entry) => entry.apart !== null && entry.apart.kind !== "before").length;
  return words.say("chart.heading", { changes, apart, sessions: history.sessions.length });
}

function summary(
  words: Words,
  heading: string,
  history: TrackHistory,
  verdict: TrackVerdict,
  changes: readonly DrawnChange[],
): string {
  const unit = history.fundamental.unit;
  const first = history.sessions[0];
  const last = history.sessions.at(-1);
  const parts = [
    words.say("chart.summary", {
      name: sayFundamental(words, history.fundamental),
      heading,
      sessions: history.sessions.length,
      stretch: first && last ? sayStretch(words, first.session.day, last.session.day) : "",
      band: sayBand(words, history.goal, unit),
    }),
    ...changes.map(({ change }) =>
      words.say("chart.summary-change", {
        before: sayLevel(words, change.before, unit),
        after: sayLevel(words, change.after, unit),
        happened: sayHappened(words, change),
      }),
    ),
  ];
  if (verdict.levelNow)
    parts.push(words.say("chart.summary-level", { level: sayLevel(words, verdict.levelNow, unit) }));
  return parts.join(" ");
}
