import { describe, expect, it } from "vitest";
import { BUILT_IN } from "@/lib/domain/catalogue";
import type { Fundamental } from "@/lib/domain/fundamental";
import type { MeasuredReaderError } from "@/lib/domain/reread";
import { readerErrorInForce } from "@/lib/verdict/reader-error-in-force";

function fundamental(id: string): Fundamental {
  const found = BUILT_IN.find((each) => each.id === id);
  if (!found) throw new Error(id);
  return found;
}
function fitted(fundamentalId: string, number: number, fromDay: string, readerSd: number): MeasuredReaderError {
  return { fundamentalId, number, fromDay, readerSd, offsetSd: null, pairs: 10, shared: 0, version: "v" };
}

describe("the reader's error in force", () => {
  const fits = [fitted("hinge", 1, "2031-02-01", 1.1), fitted("hinge", 2, "2031-03-01", 0.9)];
  it("is the customary one before the first fit's day, then each from its own day on", () => {
    const on = (day: string) => readerErrorInForce(fits, fundamental("hinge"), day);
    expect(on("2031-01-31")).toEqual({ readerSd: fundamental("hinge").readerSd, offsetSd: null, number: null });
    expect([on("2031-02-01").readerSd, on("2031-02-28").readerSd, on("2031-03-01").readerSd]).toEqual([1.1, 1.1, 0.9]);
  });
  it("of a difference is the root of the sum of squares of its parts, 3² + 4² = 5², once both are measured", () => {
    const kept = BUILT_IN.find((each) => each.derivedFrom !== null);
    if (!kept?.derivedFrom) throw new Error("no difference in the catalogue");
    const [one, other] = kept.derivedFrom;
    const first = [fitted(one, 1, "2031-02-01", 3)];
    expect(readerErrorInForce(first, kept, "2031-02-02").readerSd).toBe(kept.readerSd);
    const both = [...first, { ...fitted(other, 4, "2031-02-05", 4), offsetSd: 2 }];
    expect(readerErrorInForce(both, kept, "2031-02-04").readerSd).toBe(kept.readerSd);
    expect(readerErrorInForce(both, kept, "2031-02-05")).toEqual({ readerSd: 5, offsetSd: null, number: 4 });
  });
});
