import { describe, expect, it } from "vitest";
import type { Reach } from "@/lib/domain/track-verdict";
import { wordsFor } from "@/lib/words/catalogue";
import { sayReach } from "@/lib/words/say-reach";

const words = wordsFor("en");
const dates: Reach = { kind: "dates", from: "2026-10-03", to: "2026-11-20", chance: 0.86, horizon: "2027-03-20" };
const said = (reach: Reach, today = "2026-09-24") => sayReach(words, reach, "2026-09-19", today);

describe("when a fundamental lies inside its band", () => {
  it("a range ahead is said with both its days, of another year with the year", () => {
    expect(said(dates)).toBe("At this pace inside the band between 3 Oct and 20 Nov (80 of 100).");
    expect(said({ ...dates, to: "2027-01-20" })).toBe(
      "At this pace inside the band between 3 Oct and 20 Jan 2027 (80 of 100).",
    );
  });

  it("a range that has begun is said by its last day, and one that is over asks for a film", () => {
    expect(said({ ...dates, from: "2026-09-19" })).toBe("At this pace inside the band by 20 Nov (80 of 100).");
    expect(said(dates, "2026-10-20")).toBe("At this pace inside the band by 20 Nov (80 of 100).");
    expect(said(dates, "2026-12-01")).toBe(
      "By the films up to 19 Sep it should be inside the band by now (80 of 100). The next film shows it.",
    );
  });

  it("a chance is rounded down: .859 that it has stopped short reads 85 in 100", () => {
    expect(said({ kind: "stopped-short", chance: 0.859 })).toContain("85 in 100");
  });

  it.each(["too-few", "close", "away", "too-wide"] as const)("%s has a sentence of its own without a date", (why) => {
    const text = said({ kind: "unsaid", why });
    expect(text.length).toBeGreaterThan(20);
    expect(text).not.toMatch(/\d/);
  });
});
