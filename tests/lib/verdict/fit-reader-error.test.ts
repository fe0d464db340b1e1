import { describe, expect, it } from "vitest";
import { BUILT_IN } from "@/lib/domain/catalogue";
import type { Fundamental } from "@/lib/domain/fundamental";
import { fitReaderError } from "@/lib/verdict/fit-reader-error";
import { READER_ERROR_VERSION } from "@/lib/verdict/reader-error-thresholds";
import { madePairs } from "./made-rereads";

const hinge = BUILT_IN.find((each) => each.id === "hinge") as Fundamental;
const TEN = [1, -1, 2, -2, 0.5, -0.5, 1, -1, 1.5, -1.5];
const fitTo = (...given: Parameters<typeof fitReaderError>) => fitReaderError(...given);

describe("a fit", () => {
  it("holds from tomorrow on, over the end of a month too, and names its version and pairs", () => {
    const made = fitTo(madePairs(TEN), hinge, undefined, "2031-02-28");
    expect(made).toMatchObject({ fundamentalId: "hinge", fromDay: "2031-03-01", offsetSd: null, pairs: 10, shared: 0 });
    expect(made?.version).toBe(READER_ERROR_VERSION);
    expect(made?.readerSd).toBeCloseTo(Math.sqrt((4 * hinge.readerSd ** 2 + 8.5) / 14), 12);
  });
  it("is not made of nine pairs, nor again of the same ones", () => {
    expect(fitTo(madePairs(TEN.slice(1)), hinge, undefined, "2031-02-28")).toBeNull();
    const made = fitTo(madePairs(TEN), hinge, undefined, "2031-02-28");
    if (!made) throw new Error("not made");
    expect(fitTo(madePairs(TEN), hinge, { ...made, number: 1 }, "2031-03-05")).toBeNull();
    expect(fitTo(madePairs([...TEN, 3]), hinge, { ...made, number: 1 }, "2031-03-05")?.pairs).toBe(11);
  });
  it("of two readers compared, with no pairs of one reader, keeps the customary sd and takes the offset", () => {
    const made = fitTo(madePairs(TEN, { reader: "Lark" }), hinge, undefined, "2031-02-28");
    expect(made).toMatchObject({ readerSd: hinge.readerSd, pairs: 0, shared: 10 });
    expect(made?.offsetSd).toBeGreaterThan(0);
  });
});
