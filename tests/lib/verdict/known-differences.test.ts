import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Reading, Session } from "@/lib/domain/session";
import { type ComparedRecord, knownDifferences } from "@/lib/verdict/known-differences";

const session = (id: string, day: string, more: Partial<Session> = {}): Session => ({
  ...{ id, studentId: "s", day, sequence: 1, clubGroup: "iron", club: null, reader: "Kim", circumstance: "unaided" },
  ...{ aid: null, stanceWidthCm: null, daysSincePractice: null, marks: [], note: null, solid: null, balls: null },
  ...{ setAsideReason: null, groupId: null },
  ...more,
});
const reading = (sessionId: string, swing: number, value: number | null): Reading => ({
  ...{ sessionId, swing, fundamentalId: "hinge", value, typed: `${value}`, signRule: "neutral" },
});
const record = (more: Partial<ComparedRecord>): ComparedRecord => ({
  ...{ sessions: [], captures: [], statedCaptureSds: [], readings: [], events: [], bands: [] },
  ...more,
});

const then = record({
  sessions: [session("a", "2031-02-01"), session("b", "2031-02-03"), session("gone", "2031-02-04")],
  readings: [reading("a", 1, 5), reading("a", 2, 6), reading("b", 1, 7), reading("gone", 1, 1)],
});

describe("what is otherwise now than it was known", () => {
  it("names a changed value, one taken out, one that came, one not measurable, and passes over what stayed", () => {
    const now = {
      ...then,
      readings: [reading("a", 1, 5.5), reading("a", 3, 9), reading("b", 1, null), reading("gone", 1, 1)],
    };
    const at = { kind: "value", fundamentalId: "hinge" };
    expect(knownDifferences(then, now, "2031-02-28")).toEqual([
      { ...at, sessionId: "a", day: "2031-02-01", swing: 1, from: 5, to: 5.5 },
      { ...at, sessionId: "a", day: "2031-02-01", swing: 2, from: 6, to: undefined },
      { ...at, sessionId: "a", day: "2031-02-01", swing: 3, from: undefined, to: 9 },
      { ...at, sessionId: "b", day: "2031-02-03", swing: 1, from: 7, to: null },
    ]);
  });

  it("says a session that came or went once, whatever it holds, and facts on which a verdict rests", () => {
    const now = record({
      sessions: [
        session("a", "2031-02-01", { setAsideReason: "rain", note: "only a note" }),
        session("b", "2031-02-02", { club: "7-iron" }),
        session("late", "2031-02-02"),
      ],
      readings: [reading("a", 1, 5), reading("a", 2, 6), reading("b", 1, 7), reading("late", 1, 3)],
    });
    expect(knownDifferences(then, now, "2031-02-28")).toEqual([
      { kind: "facts", sessionId: "a", day: "2031-02-01", facts: ["setAsideReason"] },
      { kind: "facts", sessionId: "b", day: "2031-02-02", facts: ["day"] },
      { kind: "session-came", sessionId: "late", day: "2031-02-02", readings: 1 },
      { kind: "session-gone", sessionId: "gone", day: "2031-02-04", readings: 1 },
    ]);
  });

  it("a session that moved over the day looked at is named from either side; one later in both is not", () => {
    const now = {
      ...then,
      sessions: [session("a", "2031-03-09"), session("b", "2031-02-03"), session("gone", "2031-02-04")],
    };
    expect(knownDifferences(then, now, "2031-02-02").map((each) => each.kind)).toEqual(["facts"]);
    expect(knownDifferences(now, then, "2031-02-02").map((each) => each.kind)).toEqual(["facts"]);
    expect(knownDifferences(then, { ...then, readings: [] }, "2031-01-01")).toEqual([]);
  });

  it("names events and goals", () => {
    const event = { id: "e", kind: "growth", day: "2031-02-01", note: "", rebaselines: ["hinge"] } as const;
    const before = record({ events: [event, { ...event, id: "f" }] });
    const after = record({
      events: [
        { ...event, rebaselines: [] },
        { ...event, id: "g", note: "x" },
      ],
    });
    expect(knownDifferences(before, after, "2031-02-28").map((each) => each.kind)).toEqual([
      "event-changed",
      "event-gone",
      "event-came",
    ]);
    const noted = record({
      events: [
        { ...event, note: "x" },
        { ...event, id: "f" },
      ],
    });
    expect(knownDifferences(before, noted, "2031-02-28")).toEqual([]);
  });

  it("is empty for a record and itself, and otherwise of equal length both ways, whatever the values (200 pairs)", () => {
    const readings = fc
      .uniqueArray(fc.record({ swing: fc.nat(5), value: fc.option(fc.nat(3)) }), { selector: (one) => one.swing })
      .map((list) =>
        record({ sessions: then.sessions, readings: list.map(({ swing, value }) => reading("a", swing, value)) }),
      );
    fc.assert(
      fc.property(readings, readings, (one, other) => {
        expect(knownDifferences(one, one, "2031-02-28")).toEqual([]);
        expect(knownDifferences(one, other, "2031-02-28")).toHaveLength(
          knownDifferences(other, one, "2031-02-28").length,
        );
      }),
      { numRuns: 200, seed: 5 },
    );
  });
});
