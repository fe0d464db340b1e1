import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { dayFromNumber } from "@/lib/domain/calendar-day";
import { monthTicks, valueTicks } from "@/lib/report/axis";
import { wordsFor } from "@/lib/words/catalogue";

const words = wordsFor("en");
const write = (value: number, decimals: number) => value.toFixed(decimals);

describe("ticks of a value axis", () => {
  it("from -4 to 17 with six at most: -0 never, steps of 5", () =>
    expect(valueTicks(-4, 17, 6, write).map((tick) => tick.label)).toEqual(["0", "5", "10", "15"]));
  it("stand in order inside the range, at most so many and one more, each label the value", () => {
    fc.assert(
      fc.property(
        fc.double({ min: -1000, max: 1000, noNaN: true }),
        fc.double({ min: 0.2, max: 500, noNaN: true }),
        (low, span) => {
          const ticks = valueTicks(low, low + span, 6, write);
          expect(ticks.length).toBeLessThanOrEqual(7);
          expect(ticks.length).toBeGreaterThanOrEqual(1);
          for (const [at, tick] of ticks.entries()) {
            expect(tick.at).toBeGreaterThanOrEqual(low - span * 1e-6);
            expect(tick.at).toBeLessThanOrEqual(low + span * (1 + 1e-6));
            expect(Math.abs(Number(tick.label) - tick.at)).toBeLessThan(1e-6 + Math.abs(tick.at) * 1e-9);
            if (at > 0) expect(tick.at).toBeGreaterThan(ticks[at - 1]?.at ?? 0);
          }
        },
      ),
    );
  });
});

describe("ticks of a time axis", () => {
  it("a season of six months has its six month starts after the first day", () =>
    expect(monthTicks(words, "2026-03-07", "2026-09-12", 9).map((tick) => tick.label)).toEqual([
      "Apr",
      "May",
      "Jun",
      "Jul",
      "Aug",
      "Sep",
    ]));
  it("over a year's border the year stands with January", () =>
    expect(monthTicks(words, "2025-11-01", "2026-02-10", 9).map((tick) => tick.label)).toEqual([
      "Nov 2025",
      "Dec",
      "Jan 2026",
      "Feb",
    ]));
  it("a hundred years have years", () =>
    expect(monthTicks(words, "1871-07-01", "1970-07-01", 9).map((tick) => tick.label)).toEqual([
      "1880",
      "1900",
      "1920",
      "1940",
      "1960",
    ]));
  it("never more than asked for, all inside", () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 20_000 }), fc.integer({ min: 0, max: 20_000 }), (first, span) => {
        const ticks = monthTicks(words, dayFromNumber(first), dayFromNumber(first + span), 9);
        expect(ticks.length).toBeLessThanOrEqual(10);
        for (const tick of ticks) {
          expect(tick.at).toBeGreaterThanOrEqual(first);
          expect(tick.at).toBeLessThanOrEqual(first + span);
        }
      }),
    );
  });
});
