import { describe, expect, it } from "vitest";
import type { Session } from "@/lib/domain/session";
import type { Student } from "@/lib/domain/student";
import { buildContact } from "@/lib/report/build-contact";
import { buildContactCsv } from "@/lib/report/build-downloads";
import type { ContactMentions } from "@/lib/report/contact-source";
import { contactCounts } from "@/lib/verdict/contact-counts";
import { wordsFor } from "@/lib/words/catalogue";

const words = wordsFor("en");
const session = (at: number, solid: number | null, facts: Partial<Session> = {}): Session =>
  ({
    day: `2026-05-${String(at + 1).padStart(2, "0")}`,
    clubGroup: "iron",
    circumstance: "unaided",
    setAsideReason: null,
    solid,
    balls: 20,
    ...facts,
  }) as Session;
const part = (sessions: readonly Session[], mentions: ContactMentions = { notes: 0, kinds: [] }) =>
  buildContact(words, {
    student: { id: "s1" } as Student,
    sessions,
    clubGroup: "iron",
    seasonStart: "2026-01-01",
    from: "2026-05-01",
    asOf: "2026-06-01",
    mentions,
  });
const RISEN = [7, 9, 8, 6, 8, 9, 7, 15, 14, 16, 15, 13, 16, 15];

describe("buildContact", () => {
  it("without a session of the club group there is no part; without a count it says too few to tell", () => {
    expect(part([])).toBeNull();
    const none = part([session(0, null), session(1, null)]);
    expect([none?.judged, none?.table, none?.download]).toEqual([null, null, null]);
    expect(none?.heading).toBe("Solid strikes: too few to tell");
    expect(none?.texts.at(-1)).toBe("2 sessions without a count are not in it; no number of balls is guessed.");
  });

  it("what notes name is said in sessions, never as a count", () => {
    const named = {
      notes: 3,
      kinds: [
        { kind: "ground", notes: 2 },
        { kind: "toe", notes: 1 },
      ],
    } as const;
    expect(part([session(0, null)], named)?.texts.at(-1)).toBe(
      "Of 3 sessions with a note these are named in: fat 2, toe 1. A mention is no count.",
    );
    expect(part([session(0, null)])?.texts.join(" ")).not.toContain("mention");
  });

  it("three counts have a share with its doubt and say how many make a change askable", () => {
    const few = part([session(0, 8), session(1, 9), session(2, 7)]);
    expect(few?.judged?.word).toBe("Not settled");
    expect(few?.texts).toEqual(["3 sessions have a count; with four, a change can be looked for."]);
  });

  it("a proved change says from where to where and when, and stays Not settled: contact isn't on the roster's list", () => {
    const moved = part(RISEN.map((solid, at) => session(at, solid)));
    expect(moved?.heading).toMatch(/^Solid strikes: about 39 → 73 of 100, 7–9 May$/);
    expect([moved?.judged?.glyph, moved?.judged?.word]).toEqual(["open", "Not settled"]);
    expect(moved?.texts[0]).toMatch(/^Enough for these counts alone, not for the roster/);
    expect(moved?.judged?.chart.levels).toHaveLength(2);
    expect(moved?.judged?.chart.changes.map((change) => change.direction)).toEqual(["neither"]);
  });

  it("the number of the heading is that of the strip, the fact and the chart; raw counts have their span and no interval", () => {
    const level = part([8, 9, 7, 8, 9].map((solid, at) => session(at, solid)));
    const strip = level?.judged?.strip;
    const [now, latest] = level?.judged?.facts ?? [];
    expect(level?.heading).toBe(`Solid strikes: ${now?.value}`);
    expect(now?.value).toBe(
      `about ${Math.round(strip?.value ?? 0)} of 100, ${Math.round(strip?.low95 ?? 0)} to ${Math.round(strip?.high95 ?? 0)}`,
    );
    expect(level?.judged?.chart.levels[0]?.label).toBe(now?.value);
    expect([latest?.value, latest?.note]).toEqual(["17 of 40 solid", "2 sessions, since 4 May"]);
    expect(level?.judged?.chart.sessions.map((dot) => dot.mean)).toEqual([40, 45, 35, 40, 45]);
    expect(level?.judged?.chart.sessions.every((dot) => dot.low === dot.high)).toBe(true);
  });

  it("an aided count is drawn and listed apart, the latest first, in page and file", () => {
    const sessions = [session(0, 8), session(1, 19, { circumstance: "in-lesson" }), session(2, 9)];
    const apart = part(sessions);
    expect(apart?.judged?.chart.sessions.map((dot) => dot.mark)).toEqual(["used", "aided", "used"]);
    expect(apart?.table?.rows.map((row) => [row.cells[1], row.tone])).toEqual([
      ["9", "plain"],
      ["19", "quiet"],
      ["8", "plain"],
    ]);
    expect(
      buildContactCsv(contactCounts(sessions, "iron", { from: "2026-01-01", to: "2026-06-01" })).split("\r\n"),
    ).toEqual([
      "date,solid,balls,in the share",
      "2026-05-01,8,20,yes",
      "2026-05-02,19,20,aided",
      "2026-05-03,9,20,yes",
      "",
    ]);
  });
});
