import { describe, expect, it } from "vitest";
import { BUILT_IN, isBuiltInId } from "@/lib/domain/catalogue";
import { isClubGroup } from "@/lib/domain/club-group";
import { clubGroupOf } from "@/lib/domain/club-word";
import { FUNDAMENTAL_WORDS } from "@/lib/domain/fundamental-word";

describe("club words (common practice)", () => {
  it.each([
    ["7-iron", "iron"],
    ["7 Iron", "iron"],
    ["7i", "iron"],
    ["iron 5", "iron"],
    ["eight iron", "iron"],
    ["8-iron", "iron"],
    ["irons", "iron"],
    ["9-iron", "short-iron"],
    ["9i", "short-iron"],
    ["PW", "short-iron"],
    ["sand wedge", "short-iron"],
    ["wedge", "short-iron"],
    ["56°", "short-iron"],
    ["short irons", "short-iron"],
    ["3-wood", "wood"],
    ["5w", "wood"],
    ["fairway wood", "wood"],
    ["4 hybrid", "hybrid"],
    ["3h", "hybrid"],
    ["Driver", "driver"],
    ["1-wood", "driver"],
    ["short-iron", "short-iron"],
  ])("%s belongs to %s", (word, group) => expect(clubGroupOf(word)).toBe(group));

  it.each(["", "putter", "7", "stick", "12-iron", "0i", "30°", "ironing", "constructor", "__proto__"])(
    "%j is no club known here",
    (word) => expect(clubGroupOf(word)).toBeNull(),
  );
  it("says only groups of the short list", () => expect(isClubGroup(clubGroupOf("lob wedge") ?? "")).toBe(true));
});

describe("words of fundamentals", () => {
  it("every built-in one has an entry, and no word means two of them or another one's id", () => {
    expect(Object.keys(FUNDAMENTAL_WORDS).sort()).toEqual(BUILT_IN.map(({ id }) => id).sort());
    const all = Object.values(FUNDAMENTAL_WORDS).flat();
    expect(new Set(all).size).toBe(all.length);
    expect(all.filter((word) => isBuiltInId(word.replaceAll(" ", "-")))).toEqual([]);
    expect(all.filter((word) => word !== word.toLowerCase().trim() || /[-_]/.test(word))).toEqual([]);
  });
});
