import { describe, expect, it } from "vitest";
import type { TrackVerdict } from "@/lib/domain/track-verdict";
import { buildReach } from "@/lib/report/build-reach";
import type { FundamentalSource } from "@/lib/report/fundamental-source";
import { wordsFor } from "@/lib/words/catalogue";

const words = wordsFor("en");
const gain: Partial<TrackVerdict> = {
  verdict: "gain",
  listed: true,
  reach: { kind: "dates", from: "2026-10-03", to: "2026-11-20", chance: 0.86, horizon: "2027-03-20" },
};

function built(verdict: Partial<TrackVerdict>, today = "2026-09-24"): string {
  const session = (day: string, apart: unknown = null) => ({ session: { day }, apart });
  const sessions = [session("2026-09-01"), session("2026-09-19"), session("2026-09-23", { kind: "set-aside" })];
  return buildReach(words, { verdict, history: { sessions }, today } as unknown as FundamentalSource);
}

describe("the sentence on reaching the band", () => {
  it("is said of a gain on the roster's list", () => {
    expect(built(gain)).toBe("At this pace inside the band between 3 Oct and 20 Nov (80 of 100).");
  });

  it("is not said where it is no question, of what holds or is open, and of a gain that isn't on the list", () => {
    expect(built({ ...gain, reach: null })).toBe("");
    expect(built({ ...gain, verdict: "open" })).toBe("");
    expect(built({ ...gain, listed: false })).toBe("");
  });

  it("six weeks after the last film that counts no date is said: 43 days after 19 Sep, not 42", () => {
    expect(built(gain, "2026-10-31")).toContain("20 Nov");
    expect(built(gain, "2026-11-01")).toBe(
      "When it will be inside the band can’t be said: the last film that counts is of Sat 19 Sep 2026.",
    );
  });

  it("why it can't be said outlasts the six weeks", () => {
    const close: Partial<TrackVerdict> = { ...gain, reach: { kind: "unsaid", why: "close" } };
    expect(built(close, "2026-12-24")).toBe(built(close));
  });
});
