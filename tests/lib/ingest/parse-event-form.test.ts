import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { parseEventForm, parseRebaselineForm, RECORDED_EVENTS } from "@/lib/ingest/parse-event-form";
import { wordsFor } from "@/lib/words/catalogue";

const words = wordsFor("en");
const good = [
  ["kind", "new-club"],
  ["day", "2026-09-01"],
] as const;
type Entry = readonly [string, string];
const formOf = (entries: readonly Entry[]): FormData => {
  const data = new FormData();
  for (const [name, value] of entries) data.set(name, value);
  return data;
};
const read = (...more: readonly Entry[]) =>
  parseEventForm(formOf([...good, ...more]), { today: "2026-09-12", pain: "told" });
const nothing = { endDay: null, place: null, note: "", heightCm: null };

describe("an event's form (real FormData)", () => {
  it("a new set, a height, a break, a pause, a reader, a season's start: each with its own fields", () => {
    expect(read(["note", "an inch longer"])).toEqual({
      kind: "ok",
      value: { ...nothing, kind: "new-club", day: "2026-09-01", note: "an inch longer" },
    });
    const ok = (...more: readonly Entry[]) => {
      const outcome = read(...more);
      if (outcome.kind !== "ok") throw new Error(JSON.stringify(outcome.issues));
      return outcome.value;
    };
    expect(ok(["kind", "growth"], ["heightCm", "151,5"]).heightCm).toBe(151.5);
    expect(ok(["kind", "break"], ["endDay", "2026-10-01"]).endDay).toBe("2026-10-01");
    expect(ok(["kind", "injury"], ["place", "wrist"], ["endDay", ""])).toEqual({
      ...nothing,
      ...{ kind: "injury", day: "2026-09-01", place: "wrist" },
    });
    expect(ok(["kind", "reader-change"], ["reader", "Robin"]).note).toBe("Robin");
    expect(ok(["kind", "season-start"]).kind).toBe("season-start");
    expect(ok(["kind", "pause"], ["endDay", "2026-10-01"])).toEqual({
      ...nothing,
      ...{ kind: "pause", day: "2026-09-01", endDay: "2026-10-01" },
    });
    expect(RECORDED_EVENTS.told).toHaveLength(7);
  });

  it("who may not know what hurts can't say it either: an injury is no choice, a pause has days and no words", () => {
    const blind = (...more: readonly Entry[]) =>
      parseEventForm(formOf([...good, ...more]), { today: "2026-09-12", pain: "not-told" });
    expect(RECORDED_EVENTS["not-told"]).not.toContain("injury");
    expect(blind(["kind", "pause"]).kind).toBe("ok");
    for (const [more, codes] of [
      [
        [
          ["kind", "injury"],
          ["place", "wrist"],
        ],
        ["kind not-a-choice", "place not-asked"],
      ],
      [
        [
          ["kind", "pause"],
          ["place", "wrist"],
        ],
        ["place not-asked"],
      ],
      [
        [
          ["kind", "pause"],
          ["note", "the wrist"],
        ],
        ["note no-words-of-pain"],
      ],
    ] as const) {
      const outcome = blind(...(more as unknown as Entry[]));
      const issues = outcome.kind === "issues" ? outcome.issues.map(({ field, code }) => `${field} ${code}`) : [];
      expect(issues).toEqual(codes);
    }
  });

  it.each([
    [[["day", "2026-09-13"]], ["day future-date"]],
    [[["day", "yesterday"]], ["day not-a-date"]],
    [[["kind", "putting"]], ["kind not-a-choice"]],
    [
      [
        ["kind", "growth"],
        ["heightCm", "15"],
      ],
      ["heightCm not-a-height"],
    ],
    [
      [
        ["kind", "growth"],
        ["heightCm", "tall"],
      ],
      ["heightCm not-a-height"],
    ],
    [[["heightCm", "151"]], ["heightCm not-asked"]],
    [[["note", "n".repeat(301)]], ["note too-long"]],
    [
      [
        ["kind", "break"],
        ["endDay", "2026-08-31"],
      ],
      ["endDay ends-before"],
    ],
    [
      [
        ["kind", "break"],
        ["endDay", "soon"],
      ],
      ["endDay not-a-date"],
    ],
    [[["kind", "injury"]], ["place missing"]],
    [
      [
        ["kind", "injury"],
        ["place", "torn ligament"],
      ],
      ["place not-a-choice"],
    ],
    [
      [
        ["kind", "injury"],
        ["place", "knee"],
        ["note", "torn ligament"],
      ],
      ["note no-words-of-pain"],
    ],
    [[["kind", "reader-change"]], ["reader missing"]],
  ] as const)("%j is refused in words: %j", (change, issues) => {
    const outcome = read(...change);
    if (outcome.kind === "ok") throw new Error("taken");
    expect(outcome.issues.map(({ field, code }) => `${field} ${code}`)).toEqual(issues);
    for (const { code, args } of outcome.issues) expect(words.say(`form.issue.${code}`, args)).toMatch(/\w/);
  });
});

describe("2,000 hostile forms of an event", () => {
  it("never crash; what is taken has a day that has come, an end not before it, and of an injury no words", () => {
    const name = fc.constantFrom("kind", "day", "endDay", "place", "note", "heightCm", "reader", "__proto__");
    const value = fc.oneof(
      fc.constantFrom(
        "injury",
        "break",
        "growth",
        "reader-change",
        "wrist",
        "2026-09-01",
        "2026-08-01",
        "2026-09-30",
        "150",
      ),
      fc.string(),
    );
    let taken = 0;
    fc.assert(
      fc.property(fc.array(fc.tuple(name, value), { maxLength: 9 }), (entries) => {
        const outcome = parseEventForm(formOf([...good, ...entries]), { today: "2026-09-12", pain: "told" });
        if (outcome.kind === "issues") {
          expect(outcome.issues.length).toBeGreaterThan(0);
          return;
        }
        taken++;
        const { kind, day, endDay, place, note } = outcome.value;
        expect(day <= "2026-09-12" && (endDay === null || endDay >= day)).toBe(true);
        expect(place !== null).toBe(kind === "injury");
        if (kind === "injury") expect(note).toBe("");
      }),
      { numRuns: 2000, seed: 15 },
    );
    expect(taken).toBeGreaterThan(50);
  });
});

describe("which tracks begin anew (real FormData)", () => {
  const offered = ["hinge", "hip-sway"];
  it("are those ticked, none too, and always with a reason", () => {
    const data = formOf([["why", "longer irons"]]);
    expect(parseRebaselineForm(data, offered)).toEqual({ kind: "ok", value: { after: [], why: "longer irons" } });
    data.append("rebaselines", "hip-sway");
    data.append("rebaselines", "hinge");
    expect(parseRebaselineForm(data, offered)).toMatchObject({ value: { after: ["hinge", "hip-sway"] } });
    data.append("rebaselines", "putting");
    data.delete("why");
    expect(parseRebaselineForm(data, offered)).toMatchObject({
      issues: [{ code: "not-a-choice" }, { field: "why", code: "missing" }],
    });
  });
});
