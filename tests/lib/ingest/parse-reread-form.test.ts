import { describe, expect, it } from "vitest";
import { BUILT_IN } from "@/lib/domain/catalogue";
import type { Fundamental } from "@/lib/domain/fundamental";
import {
  FEWEST,
  MOST_DRAWN,
  parseRereadForm,
  parseRereadWish,
  parseSecondReader,
} from "@/lib/ingest/parse-reread-form";

function form(entries: Readonly<Record<string, string>>): FormData {
  const data = new FormData();
  for (const [name, value] of Object.entries(entries)) data.set(name, value);
  return data;
}
const hinge = BUILT_IN.find((each) => each.id === "hinge") as Fundamental;
const context = { fundamentals: BUILT_IN, readers: ["Coach Tern", "Coach Wren"], usual: 20 };
const items = [1, 2, 3].map((place) => ({ place, fundamental: hinge }));

describe("what a draw is asked for", () => {
  it("an empty form takes those with the fewest, twenty, the film opened again, the first reader", () => {
    expect(parseRereadWish(form({}), context)).toEqual({
      kind: "ok",
      value: { fundamentalId: null, level: "b", reader: "Coach Tern", count: 20 },
    });
  });
  it("takes what is chosen", () => {
    const data = form({ fundamental: "hinge", level: "a", reader: "Coach Wren", count: "12" });
    expect(parseRereadWish(data, context)).toEqual({
      kind: "ok",
      value: { fundamentalId: "hinge", level: "a", reader: "Coach Wren", count: 12 },
    });
    expect(parseRereadWish(form({ fundamental: FEWEST }), context)).toMatchObject({ value: { fundamentalId: null } });
  });
  it("refuses another fundamental, a derived one, another level or reader, and none or too many", () => {
    const derived = BUILT_IN.find((each) => each.derivedFrom !== null)?.id ?? "";
    const wrong = (entries: Readonly<Record<string, string>>) => {
      const outcome = parseRereadWish(form(entries), context);
      return outcome.kind === "issues" ? outcome.issues.map((issue) => `${issue.field} ${issue.code}`) : [];
    };
    expect(wrong({ fundamental: "grip" })).toEqual(["fundamental not-a-choice"]);
    expect(wrong({ fundamental: derived })).toEqual(["fundamental not-a-choice"]);
    expect(wrong({ level: "c", reader: "Nobody" })).toEqual(["level not-a-choice", "reader not-a-choice"]);
    for (const count of ["0", String(MOST_DRAWN + 1), "two"]) expect(wrong({ count })).toEqual(["count not-a-count"]);
  });
});

describe("what was read again", () => {
  it("takes numbers, commas, the own unit and n/m, as typed; an empty field is nothing, never 0", () => {
    const got = parseRereadForm(form({ "v.1": " 81,5 ", "v.2": "n/m", "v.3": "" }), items);
    expect(got).toEqual({
      values: [
        { place: 1, value: 81.5, typed: "81,5", unit: "deg" },
        { place: 2, value: null, typed: "n/m", unit: "deg" },
      ],
      issues: [],
      finish: "no",
    });
    expect(parseRereadForm(form({ "v.1": "81°", finish: "yes" }), items)).toMatchObject({
      values: [{ value: 81 }],
      finish: "yes",
    });
  });
  it("a good value is never lost for a bad one, and every bad one is named", () => {
    const got = parseRereadForm(form({ "v.1": "8o", "v.2": "82", "v.3": "1,234" }), items);
    expect(got.values.map((value) => value.place)).toEqual([2]);
    expect(got.issues.map((issue) => `${issue.field} ${issue.code}`)).toEqual(["v.1 not-a-number", "v.3 two-readings"]);
  });
  it("unusual in anyone is asked back once, by the fundamental's own edges alone; another unit is refused", () => {
    const value = String(hinge.plausible.high + 1);
    expect(parseRereadForm(form({ "v.1": value }), items).issues[0]?.code).toBe("unusual");
    expect(parseRereadForm(form({ "v.1": value, confirmUnusual: "yes" }), items).values).toHaveLength(1);
    expect(parseRereadForm(form({ "v.1": "12 %" }), items).issues[0]?.code).toBe("other-unit");
  });
  it("fields that the draw doesn't ask for are passed over", () => {
    expect(parseRereadForm(form({ "v.4": "80", "r.1.hinge": "80" }), items).values).toEqual([]);
  });
});

describe("a second reader", () => {
  it("needs a name of at most eighty letters", () => {
    expect(parseSecondReader(form({ reader: "  Coach Tern " }))).toEqual({ kind: "ok", value: "Coach Tern" });
    expect(parseSecondReader(form({})).kind).toBe("issues");
    expect(parseSecondReader(form({ reader: "x".repeat(81) })).kind).toBe("issues");
  });
});
