import { dayFromNumber } from "@/lib/domain/calendar-day";
import type { Hand } from "@/lib/domain/handedness";
import type { TrackVerdict } from "@/lib/domain/track-verdict";
import type { TrackHistory } from "@/lib/verdict/track-history";
import type { Words } from "@/lib/words/catalogue";
import { sayDay, sayStretch } from "@/lib/words/day-words";
import { capital } from "@/lib/words/say-family";
import { sayFamilyPart } from "@/lib/words/say-family-part";
import { sayFamilySide } from "@/lib/words/say-family-side";
import { isAway } from "./away-days";
import { buildSeasonChart } from "./build-season-chart";
import type { ChartLevel, SeasonChart } from "./chart-model";
import { familyEmptyDots } from "./family-empty-dots";
import type { FamilyPicture } from "./family-look-model";
import { familyMonths } from "./family-months";
import { sayFamilyPicture } from "./family-picture-said";
import { drawnChanges } from "./said";

/** What a family's picture is drawn from. */
export interface FamilyPictureSource {
  readonly history: TrackHistory;
  readonly verdict: TrackVerdict;
  readonly hand: Hand;
  /** `young`: no digit, and a strip that isn't made for them. */
  readonly reader: "young" | "other";
  readonly today: string;
}

/** The season chart with those changes alone that stood on the roster's list, and the levels that hold without the others. */
function listedChart(words: Words, { history, verdict, today }: FamilyPictureSource): SeasonChart {
  const drawn = drawnChanges(verdict);
  const listed = drawn.filter(({ standing }) => standing === "listed").map(({ change }) => change);
  const alone = drawn.filter(({ standing }) => standing === "alone").map(({ change }) => change);
  const chart = buildSeasonChart(words, {
    history,
    verdict: { ...verdict, changes: listed, listed: listed.length > 0 ? true : verdict.listed },
    ...{ drills: [], events: [], asOf: today, from: null },
  });
  // A level that a change which nobody is told runs through was held in none of its days.
  const holds = ({ from, to }: ChartLevel): boolean =>
    alone.every((change) => dayFromNumber(to) < change.from || dayFromNumber(from) > change.to);
  return { ...chart, levels: chart.levels.filter((level) => level.standing === "proved" && holds(level)) };
}

function readings(words: Words, source: FamilyPictureSource, chart: SeasonChart): string[] {
  const { history, hand, reader } = source;
  const say = (key: string): string => words.say(`family-page.read.${key}`);
  const { low, high } = history.goal;
  const hasStrip = low !== null || high !== null;
  if (reader === "young")
    return [...(hasStrip ? [say("young")] : []), say("dot.young"), ...familyEmptyDots(words, history.sessions, reader)];
  return [
    hasStrip ? sayFamilySide(words, history.fundamental, hand, "read") : say("no-strip"),
    say("dot"),
    ...(chart.levels.length > 0 ? [say("level")] : []),
    ...(chart.changes.length > 0 ? [say("change")] : []),
    ...familyEmptyDots(words, history.sessions, reader),
  ];
}

/**
 * The season of one fundamental as a family sees it: the season chart's own numbers and places, without units, with its
 * meaning in the heading and its ends in words of the student's own left and right. A change is drawn as the stretch of days
 * in which it happened, and only where it stood on the roster's list.
 */
export function buildFamilyPicture(words: Words, source: FamilyPictureSource): FamilyPicture {
  const { history, hand, reader } = source;
  const chart = listedChart(words, source);
  const { low, high } = history.goal;
  const side = (what: "high" | "low"): string => sayFamilySide(words, history.fundamental, hand, what);
  const lastLevel = chart.levels.at(-1);
  const lastDot = chart.sessions.findLast(({ mark }) => mark === "used");
  const isNow =
    lastDot !== undefined && lastLevel?.to === lastDot.day && !isAway(dayFromNumber(lastDot.day), source.today);
  const day = (number: number): string => dayFromNumber(number);
  const months = (from: number, to: number): string => familyMonths(words, [day(from), day(to)], "stretch", source);
  const picture: Omit<FamilyPicture, "summary"> = {
    heading: capital(sayFamilyPart(words, history.fundamental, hand)),
    reads: readings(words, source, chart),
    high: high === null ? "" : side("high"),
    low: low === null ? "" : side("low"),
    inside: low === null && high === null ? "" : words.say("family-page.in-strip"),
    x:
      reader === "young"
        ? { ...chart.x, ticks: chart.x.ticks.map(({ at }) => ({ at, label: sayDay(words, day(at), "month") })) }
        : chart.x,
    y: { low: chart.y.low, high: chart.y.high },
    // The edges' values are numbers, and stand with the other numbers.
    bands: chart.bands.map((band) => ({ ...band, lowLabel: null, highLabel: null })),
    sessions: chart.sessions.map((dot) => ({
      ...{ day: dot.day, mean: dot.mean, low: dot.low, high: dot.high },
      mark: dot.mark === "used" ? "used" : "set-aside",
    })),
    levels: chart.levels.map((level) => ({
      ...level,
      label: level === lastLevel && isNow ? words.say("family-page.now") : months(level.from, level.to),
    })),
    changes: chart.changes.map((change) => ({
      ...change,
      label: words.say(`family-page.change.${change.direction}`),
      daysLabel:
        reader === "young"
          ? familyMonths(words, [day(change.from), day(change.to)], "or", source)
          : sayStretch(words, day(change.from), day(change.to)),
    })),
  };
  return { ...picture, summary: sayFamilyPicture(words, picture, source) };
}
