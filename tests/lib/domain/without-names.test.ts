import { describe, expect, it } from "vitest";
import { scrubbedText, withoutNames } from "@/lib/domain/without-names";

const naming = { ids: new Set(["s1"]), aliases: ["Ari"] };

describe("withoutNames", () => {
  it("takes a field with what was typed into it, and leaves the others'", () => {
    const body = {
      entries: [
        ["r.1.s1.hinge", "90"],
        ["r.1.s2.hinge", "91"],
      ],
      refusal: "",
    };
    expect(withoutNames(body, naming)).toEqual({ entries: [["r.1.s2.hinge", "91"]], refusal: "" });
  });

  it("takes a line of a log whole, by an id or an alias anywhere in it", () => {
    const log = {
      changed: [
        { code: "sign", args: { alias: "Ari", rows: "3" } },
        { code: "sign", args: { alias: "Bo" } },
      ],
      who: "Lark",
    };
    expect(withoutNames(log, naming)).toEqual({ changed: [{ code: "sign", args: { alias: "Bo" } }], who: "Lark" });
  });

  it("takes what stands under a name, and a text that names them", () => {
    expect(withoutNames({ s1: 3, note: "of Ari", other: "x" }, naming)).toEqual({ other: "x" });
    expect(withoutNames(["s1/hinge", "s2/hinge"], naming)).toEqual(["s2/hinge"]);
  });

  it("is the same value where nothing names them", () => {
    const value = { entries: [["a", "b"]], count: 3, none: null };
    expect(withoutNames(value, naming)).toBe(value);
  });
});

describe("scrubbedText", () => {
  it("is the text itself, letter for letter, where nothing names them", () => {
    expect(scrubbedText('{ "a":  1 }', naming)).toBe('{ "a":  1 }');
  });

  it("a text that is no JSON and names them is left empty", () => {
    expect(scrubbedText("of Ari", naming)).toBe("");
    expect(scrubbedText("of Bo", naming)).toBe("of Bo");
  });
});
