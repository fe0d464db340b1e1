import { describe, expect, it } from "vitest";
import { carriedText, LONGEST_CARRIED, parseCarried } from "@/lib/domain/carried-look";
import { SAID } from "../ingest/carried-archive";

describe("a carried look", () => {
  it("comes back from its text as it was, figure by figure", () => {
    expect(parseCarried(carriedText(SAID))).toEqual(SAID);
    const bare = { ...SAID, whole: null };
    expect(parseCarried(carriedText(bare))).toEqual(bare);
  });

  it("with everything that one may hold is far below the limit", () => {
    expect(carriedText(SAID).length).toBeLessThan(LONGEST_CARRIED / 3);
  });

  it("is none where a field is missing, is another's, or the text isn't one", () => {
    const { listed: _listed, ...rest } = SAID;
    for (const text of ["", "{}", JSON.stringify(rest), JSON.stringify({ ...SAID, more: 1 }), "null"])
      expect(parseCarried(text)).toBeNull();
  });

  it("isn't written with a figure that is none", () => {
    expect(() => carriedText({ ...SAID, logBayesFactor: Number.NaN })).toThrow();
    expect(() => carriedText({ ...SAID, directionUp: 1.2 })).toThrow();
  });
});
