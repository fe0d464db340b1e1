import { describe, expect, it } from "vitest";
import { isAliasIn, isAliasInFileName, isIdIn, isNamedIn } from "@/lib/domain/named-in";

describe("isAliasIn", () => {
  it("finds an alias as a word of its own, whatever its capitals and however its letters are composed", () => {
    for (const text of ["Ari", "with ari.", "student;ARI;3", "ari's swing", "(Ari)"])
      expect(isAliasIn(text, ["Ari"])).toBe(true);
    expect(isAliasIn("Zoe\u0308 moved", ["Zoë"])).toBe(true);
    expect(isAliasIn("Aria, Mari, Ari2, Bari", ["Ari"])).toBe(false);
  });

  it("an empty alias names nobody; letters beyond the first plane end no word", () => {
    expect(isAliasIn("anything", [""])).toBe(false);
    expect(isAliasIn("𝒜ri", ["ri"])).toBe(false);
  });
});

describe("isIdIn", () => {
  it("finds an id whole: s1 stands in r.s1.hinge and not in s12 or s1-e1", () => {
    const ids = new Set(["s1"]);
    expect(isIdIn("r.s1.hinge", ids)).toBe(true);
    expect(isIdIn("s1/hinge/iron", ids)).toBe(true);
    expect(isIdIn("s12 s1-e1 xs1", ids)).toBe(false);
  });
});

it("a text names somebody by either; the name of a file also where words run into each other", () => {
  const naming = { ids: new Set(["s1"]), aliases: ["Ari"] };
  expect(isNamedIn("of Ari", naming)).toBe(true);
  expect(isNamedIn("of s1", naming)).toBe(true);
  expect(isNamedIn("of Bo", naming)).toBe(false);
  expect(isAliasInFileName("ari2026.csv", ["Ari"])).toBe(true);
  expect(isAliasInFileName("bo.csv", ["Ari"])).toBe(false);
});
