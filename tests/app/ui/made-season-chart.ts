import type { ChartSession, SeasonChart, SessionMark } from "@/lib/report/chart-model";

/** A made-up session whose swings lie half a unit to both sides of its mean. */
export function madeSession(day: number, mean: number, mark: SessionMark = "used"): ChartSession {
  return {
    day,
    mean,
    low: mean - 3,
    high: mean + 3,
    swings: [mean - 0.5, mean, mean + 0.5],
    mark,
    dateLabel: `day ${day}`,
    meanLabel: `${mean}°`,
    doubtLabel: "± 3.0°",
    reason: mark === "used" ? "" : `apart on day ${day}`,
    sentence: `Day ${day}: ${mean} ± 3.0°.`,
  };
}

/** A made-up season: out of its band, a gain, in the band, a slip, out again; one session set aside, one with an aid. */
export function madeSeasonChart(): SeasonChart {
  return {
    heading: "Three levels, two changes",
    summary: "A level of 12° until day 30, 2° until day 120, 7° since.",
    unitLabel: "deg",
    bandLabel: "goal band",
    levelLabel: "level",
    x: {
      from: 0,
      to: 200,
      ticks: [
        { at: 0, label: "Mar" },
        { at: 31, label: "Apr" },
        { at: 61, label: "May" },
      ],
    },
    y: {
      low: -5,
      high: 18,
      ticks: [
        { at: 0, label: "0" },
        { at: 10, label: "10" },
      ],
    },
    bands: [{ from: 0, to: 200, low: -3, high: 4, lowLabel: "−3° open", highLabel: "+4° closed" }],
    sessions: [
      madeSession(5, 12),
      madeSession(20, 11),
      madeSession(45, 2),
      madeSession(80, 10, "set-aside"),
      madeSession(95, 1, "aided"),
      madeSession(110, 3),
      madeSession(150, 7),
      madeSession(190, 8),
    ],
    levels: [
      { from: 5, to: 20, value: 12, low: 10, high: 14, standing: "proved", label: "12 ± 2°" },
      { from: 45, to: 110, value: 2, low: 1, high: 3, standing: "proved", label: "2 ± 1°" },
      { from: 150, to: 190, value: 7, low: 5, high: 9, standing: "open", label: "7 ± 2°" },
    ],
    changes: [
      {
        from: 20,
        to: 45,
        direction: "toward",
        before: 12,
        after: 2,
        afterLow: 1,
        afterHigh: 3,
        label: "Real gain, −10 ± 2°",
        daysLabel: "in days 20 to 45",
      },
      {
        from: 110,
        to: 150,
        direction: "away",
        before: 2,
        after: 7,
        afterLow: 5,
        afterHigh: 9,
        label: "Real slip, +5 ± 2°",
        daysLabel: "in days 110 to 150",
      },
    ],
    drills: [{ from: 25, to: 60, label: "Two-stick rails" }],
    events: [{ from: 100, to: 100, label: "new clubs" }],
  };
}

/** How many times a pattern stands in a text. */
export function countOf(text: string, pattern: RegExp): number {
  return [...text.matchAll(pattern)].length;
}
