import { describe, expect, it } from "vitest";
import { wordsFor } from "@/lib/words/catalogue";
import { sayHour } from "@/lib/words/say-hour";

const words = wordsFor("en");

describe("sayHour", () => {
  it("says 13:05 UTC as 14:05 in Berlin's winter, 15:05 in its summer", () => {
    expect(sayHour(words, "2026-11-24T13:05:59.000Z", "Europe/Berlin", "2026-11-24")).toBe("14:05");
    expect(sayHour(words, "2026-07-24T13:05:00.000Z", "Europe/Berlin", "2026-07-24")).toBe("15:05");
  });

  it("names the day where it isn't today there, and begins a day with 00", () => {
    expect(sayHour(words, "2026-11-23T23:30:00.000Z", "Europe/Berlin", "2026-11-24")).toBe("00:30");
    expect(sayHour(words, "2026-11-23T22:30:00.000Z", "Europe/Berlin", "2026-11-24")).toBe("23 Nov, 23:30");
  });
});
