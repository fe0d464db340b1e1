import { describe, expect, it } from "vitest";
import { wordsFor } from "@/lib/words/catalogue";
import { type DayStyle, sayDay, sayLongDay, sayMonth, sayOnDay, sayStretch } from "@/lib/words/day-words";
import { sayBand, sayLevel, sayNumber, sayShare, saySigned } from "@/lib/words/number-words";
import { sayWhen } from "@/lib/words/say-family";

const [en, de] = [wordsFor("en"), wordsFor("de")];
const STYLES = Object.keys({
  ...{ weekday: 1, short: 1, "with-weekday": 1, full: 1, "day-year": 1, month: 1, "month-year": 1, year: 1 },
  ...{ "long-month": 1, "long-month-year": 1 },
} satisfies Record<DayStyle, 1>) as DayStyle[];

describe("days in German", () => {
  it.each([
    ["short", "12. September"],
    ["with-weekday", "Sa, 12. September"],
    ["full", "Sa, 12. September 2026"],
    ["day-year", "12. September 2026"],
    ["long-month", "September"],
    ["long-month-year", "September 2026"],
  ] as const)("a day as %s reads “%s”", (style, said) => expect(sayDay(de, "2026-09-12", style)).toBe(said));

  // The names of days and months are the platform's own, from the locale data of Unicode.
  it("names months and weekdays as the platform does", () => {
    for (let month = 1; month <= 12; month++) {
      const day = `2026-${String(month).padStart(2, "0")}-${String(month + 3).padStart(2, "0")}`;
      const at = new Date(`${day}T12:00:00Z`);
      const platform = (options: Intl.DateTimeFormatOptions): string =>
        new Intl.DateTimeFormat("de-DE", { timeZone: "UTC", ...options }).format(at);
      expect(sayOnDay(de, day, "2026-12-31")).toBe(platform({ day: "numeric", month: "long" }));
      expect(sayOnDay(de, day, "2027-12-31")).toBe(platform({ day: "numeric", month: "long", year: "numeric" }));
      expect(sayLongDay(de, day)).toBe(platform({ weekday: "long", day: "numeric", month: "long" }));
      expect(sayMonth(de, day, "2026-12-31")).toBe(platform({ month: "long" }));
      expect(sayDay(de, day, "weekday")).toBe(platform({ weekday: "short" }));
    }
  });

  it("no style but of a month alone ends in a full stop, which a sentence would double", () => {
    for (const style of STYLES.filter((each) => !each.startsWith("month")))
      expect(`${style}: ${sayDay(de, "2026-09-12", style)}`).not.toMatch(/\.$/);
  });

  it("stretches, and when it was", () => {
    expect(sayStretch(de, "2026-07-06", "2026-07-21")).toBe("6.–21. Juli");
    expect(sayStretch(de, "2026-06-25", "2026-08-29")).toBe("25. Juni – 29. August");
    expect(sayStretch(de, "2025-12-28", "2026-01-03")).toBe("28. Dezember 2025 – 3. Januar 2026");
    expect(sayWhen(de, "2026-03-03", "2026-09-12")).toBe("im März");
    expect(sayWhen(de, "2026-09-03", "2026-09-12")).toBe("am 3. September");
  });

  it("English stays as it was", () => {
    expect(sayDay(en, "2026-09-12", "full")).toBe("Sat 12 Sep 2026");
    expect(sayStretch(en, "2026-07-06", "2026-07-21")).toBe("6–21 Jul");
    expect(sayWhen(en, "2026-03-03", "2026-09-12")).toBe("in March");
    expect(sayOnDay(en, "2025-05-03", "2026-09-12")).toBe("3 May 2025");
  });
});

describe("numbers in German", () => {
  it("have a comma, a true minus sign and no negative zero", () => {
    expect(sayNumber(de, -3.25, 1)).toBe("−3,3");
    expect(sayNumber(de, -0.04, 1)).toBe("0,0");
    expect(saySigned(de, 2.5, 1)).toBe("+2,5");
    expect(saySigned(de, -0.01, 1)).toBe("0,0");
    expect(sayNumber(de, 12.5, 2)).toBe(new Intl.NumberFormat("de-DE", { minimumFractionDigits: 2 }).format(12.5));
  });
  it("in levels, bands and shares", () => {
    expect(sayLevel(de, { estimate: 6.68, low95: 5.9, high95: 7.5 }, "deg")).toBe("6,7\u00a0±\u00a00,8°");
    expect(sayBand(de, { low: -3.5, high: 4 }, "deg")).toBe("−3,5 bis 4°");
    expect(sayBand(de, { low: null, high: 8 }, "pct-stance")).toBe("höchstens 8\u00a0%");
    expect(sayShare(de, { estimate: 0.244, low95: 0.113, high95: 0.431 })).toBe("etwa 24 von 100, 11 bis 43");
  });
});
