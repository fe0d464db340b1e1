import { describe, expect, it } from "vitest";
import { BUILT_IN, isBuiltInId } from "@/lib/domain/catalogue";
import { CLUBS, clubsOfKind, kindOfClub } from "@/lib/domain/club";
import { CLUB_KINDS, isClubKind } from "@/lib/domain/club-group";
import { clubKindOfWord, readClubWord } from "@/lib/domain/club-word";
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
  ])("%s belongs to %s", (word, group) => expect(clubKindOfWord(word)).toBe(group));

  it.each(["", "putter", "7", "stick", "12-iron", "0i", "30°", "ironing", "constructor", "__proto__"])(
    "%j is no club known here",
    (word) => expect(clubKindOfWord(word)).toBeNull(),
  );
  it("says only groups of the short list", () => expect(isClubKind(clubKindOfWord("lob wedge") ?? "")).toBe(true));
});

describe("one club (common practice)", () => {
  it.each([
    ["7-iron", "7i"],
    ["iron 5", "5i"],
    ["nine iron", "9i"],
    ["4 rescue", "4h"],
    ["3hy", "3h"],
    ["hybrid 5", "5h"],
    ["5 fairway wood", "5w"],
    ["1-wood", "driver"],
    ["1w", "driver"],
    ["PW", "pw"],
    ["approach wedge", "gw"],
    ["48°", "pw"],
    ["49 deg", "gw"],
    ["56", "sw"],
    ["60° wedge", "lw"],
  ])("%s is the %s", (word, club) => expect(readClubWord(word)?.club).toBe(club));
  it.each(["irons", "wedge", "short irons", "woods"])("%s names a kind, no club of it", (word) =>
    expect(readClubWord(word)?.club).toBeNull(),
  );
  it("every club is read back from its own id, of its own kind", () => {
    for (const club of CLUBS) expect(readClubWord(club)).toEqual({ club, kind: kindOfClub(club) });
    expect(CLUBS).toHaveLength(30);
    expect(new Set(CLUB_KINDS.flatMap((kind) => clubsOfKind(kind)))).toEqual(new Set(CLUBS));
  });
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
