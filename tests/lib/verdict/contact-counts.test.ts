import { describe, expect, it } from "vitest";
import type { Session } from "@/lib/domain/session";
import { contactCounts } from "@/lib/verdict/contact-counts";

const session = (day: string, facts: Partial<Session>): Session =>
  ({ day, clubGroup: "iron", circumstance: "unaided", setAsideReason: null, solid: 5, balls: 10, ...facts }) as Session;
const season = { from: "2026-01-01", to: "2026-12-31" };

describe("contactCounts", () => {
  it("takes only stated counts of whole sessions: no denominator is made up, no aided count enters", () => {
    const counts = contactCounts(
      [
        session("2026-05-01", {}),
        session("2026-05-02", { balls: null }),
        session("2026-05-03", { solid: null }),
        session("2026-05-04", { solid: 0, balls: 0 }),
        session("2026-05-05", { circumstance: "in-lesson" }),
        session("2026-05-06", { setAsideReason: "wind" }),
        session("2026-05-07", { clubGroup: "wood" as Session["clubGroup"] }),
        session("2025-12-31", {}),
        session("2027-01-01", {}),
      ],
      "iron",
      season,
    );
    expect(counts).toEqual({
      counted: [{ day: "2026-05-01", solid: 5, balls: 10 }],
      apart: [
        { day: "2026-05-05", solid: 5, balls: 10, why: "aided" },
        { day: "2026-05-06", solid: 5, balls: 10, why: "set-aside" },
      ],
      uncounted: 3,
    });
  });

  it("11 of 10 is refused", () => {
    expect(() => contactCounts([session("2026-05-01", { solid: 11 })], "iron", season)).toThrow("11 of 10 balls");
  });
});
