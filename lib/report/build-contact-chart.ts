import { dayFromNumber, dayNumber } from "@/lib/domain/calendar-day";
import type { ContactCount, ContactCounts } from "@/lib/verdict/contact-counts";
import type { ContactLevel, ContactShare } from "@/lib/verdict/contact-share";
import type { Words } from "@/lib/words/catalogue";
import { sayDay } from "@/lib/words/day-words";
import { sayNumber, sayShare } from "@/lib/words/number-words";
import { sayContactChange } from "@/lib/words/say-contact";
import { monthTicks } from "./axis";
import type { ChartLevel, ChartSession, SeasonChart } from "./chart-model";
import type { ContactSource } from "./contact-source";

/**
 * The share of solid strikes by session, in percent, on the time axis that the season's charts share. A dot is a count and
 * has no bar: how sure a share is says the model's level with its shade.
 */
export function buildContactChart(
  words: Words,
  source: Pick<ContactSource, "from" | "asOf">,
  counts: ContactCounts,
  share: ContactShare,
): SeasonChart {
  const [start, end] = [dayNumber(source.from), Math.max(dayNumber(source.asOf), dayNumber(source.from) + 1)];
  const air = Math.max(1, Math.round((end - start) * 0.02));
  const x = { from: start - air, to: end + air };
  const heading =
    share.change === null
      ? words.say("contact.chart.heading", { sessions: counts.counted.length })
      : words.say("contact.chart.moved", { change: sayContactChange(words, share.change) });
  const sessions = [
    ...counts.counted.map((count) => dot(words, count, "used")),
    ...counts.apart.map((count) => dot(words, count, count.why)),
  ].sort((a, b) => a.day - b.day);
  return {
    heading,
    summary: words.say("contact.chart.summary", {
      heading,
      share: sayShare(words, share.now),
      counts: sessions.map((session) => session.sentence).join(" "),
    }),
    unitLabel: words.say("contact.chart.unit"),
    bandLabel: "",
    x: { ...x, ticks: monthTicks(words, dayFromNumber(x.from), dayFromNumber(x.to), 9) },
    y: {
      low: 0,
      high: 100,
      ticks: [0, 50, 100].map((at) => ({ at, label: words.say("contact.percent", { number: String(at) }) })),
    },
    bands: [],
    sessions,
    levels: levels(words, counts.counted, share),
    changes:
      share.change === null
        ? []
        : [
            {
              from: dayNumber(share.change.from),
              to: dayNumber(share.change.to),
              direction: "neither",
              before: 100 * share.change.before.estimate,
              after: 100 * share.change.after.estimate,
              afterLow: 100 * share.change.after.low95,
              afterHigh: 100 * share.change.after.high95,
              label: sayContactChange(words, share.change),
              daysLabel: "",
            },
          ],
    drills: [],
    events: [],
  };
}

function dot(words: Words, { day, solid, balls }: ContactCount, mark: ChartSession["mark"]): ChartSession {
  const mean = (100 * solid) / balls;
  const dateLabel = sayDay(words, day, "with-weekday");
  const meanLabel = words.say("contact.solid", { solid, balls });
  return {
    day: dayNumber(day),
    mean,
    low: mean,
    high: mean,
    swings: [],
    mark,
    dateLabel,
    meanLabel,
    doubtLabel: words.say("contact.percent", { number: sayNumber(words, Math.round(mean), 0) }),
    reason: "",
    sentence: words.say("contact.chart.session", { day: dateLabel, count: meanLabel }),
  };
}

/** One level over all counted sessions, or the two about a proved change; none is settled for the roster. */
function levels(words: Words, counted: readonly ContactCount[], { now, change }: ContactShare): ChartLevel[] {
  const [first, last] = [counted[0] as ContactCount, counted.at(-1) as ContactCount];
  const level = (from: string, to: string, value: ContactLevel): ChartLevel => ({
    from: dayNumber(from),
    to: dayNumber(to),
    value: 100 * value.estimate,
    low: 100 * value.low95,
    high: 100 * value.high95,
    standing: "open",
    label: sayShare(words, value),
  });
  return change === null
    ? [level(first.day, last.day, now)]
    : [level(first.day, change.from, change.before), level(change.to, last.day, change.after)];
}
