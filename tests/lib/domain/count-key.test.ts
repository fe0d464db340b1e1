import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { countKey, readCountKey } from "@/lib/domain/count-key";

describe("the key of a count", () => {
  it("is read as it was written, whatever the session is called", () =>
    fc.assert(
      fc.property(fc.string({ unit: "grapheme", minLength: 1 }), fc.string({ minLength: 1 }), (sessionId, place) => {
        const key = { scope: "note", sessionId, place } as const;
        expect(readCountKey(countKey(key))).toEqual(key);
      }),
    ));

  it("of a number word is the words", () =>
    expect(readCountKey(countKey({ scope: "academy", words: "couple thin" }))).toEqual({
      scope: "academy",
      words: "couple thin",
    }));

  it("is never a phrase, nor is a phrase a key", () => {
    for (const phrase of ["# thin", "thin #", "no shanks", "", "@", "@one", "@%E0 1 thin"])
      expect(readCountKey(phrase)).toBeNull();
  });
});
