import { describe, expect, it } from "vitest";
import { contactMentions } from "@/app/_server/session/contact-mentions";
import type { Session } from "@/lib/domain/session";

const session = (day: string, note: string | null, clubGroup = "iron") =>
  ({ day, note, clubGroup, balls: null }) as Session;
const days = { from: "2026-01-01", to: "2026-12-31" };

describe("what a season's notes name", () => {
  it("each kind counts a session once; negated, of another club group and of another season not at all", () => {
    const sessions = [
      session("2026-03-01", "3 thin, 2 thin, one fat"),
      session("2026-03-08", "no shanks, still thin"),
      session("2026-03-15", "windy"),
      session("2026-03-22", null),
      session("2026-03-29", "all toe", "driver"),
      session("2025-03-29", "fat, fat"),
    ];
    expect(contactMentions(sessions, "iron", days, new Map())).toEqual({
      notes: 3,
      kinds: [
        { kind: "low", notes: 2 },
        { kind: "ground", notes: 1 },
      ],
    });
  });

  it("what the academy said of a phrase holds", () =>
    expect(
      contactMentions(
        [session("2026-03-01", "2 lateral"), session("2026-03-08", "one fat")],
        "iron",
        days,
        new Map([
          ["# lateral", { as: "strike", kind: "toe" }],
          ["# fat", { as: "nothing" }],
        ]),
      ),
    ).toEqual({ notes: 2, kinds: [{ kind: "toe", notes: 1 }] }));

  it("without notes nothing is named", () =>
    expect(contactMentions([session("2026-03-01", null)], "iron", days, new Map())).toEqual({ notes: 0, kinds: [] }));
});
