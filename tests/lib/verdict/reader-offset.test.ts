import { describe, expect, it } from "vitest";
import { readerOffset } from "@/lib/verdict/reader-offset";
import { answerOf, expectNear } from "@/tests/reference/read-reference";
import { seededNormals } from "../stats/seeded-normals";
import { madePairs } from "./made-rereads";

const TEN = [3, 1, 2, 2, 3, 1, 2, 2, 3, 1];
const lark = { reader: "Lark" };

describe("two readers on the same swings", () => {
  it("differences go the way of the names, whoever read first: Lark less Wren is +2 in both", () => {
    const [one] = readerOffset(madePairs(TEN, lark), 1).compared;
    const turned = madePairs(
      TEN.map((d) => -d),
      { firstReader: "Lark", reader: "Wren" },
    );
    const [other] = readerOffset(turned, 1).compared;
    for (const each of [one, other]) {
      if (!each) throw new Error("not compared");
      expect(each.readers).toEqual(["Lark", "Wren"]);
      expectNear(answerOf(each.agreement).bias.value, 2, { rel: 1e-12 });
    }
  });
  it("ten shared: bias 2, its error s / sqrt 10, so (2² - s²/10) / 2 beside the customary 1.5², each for one degree", () => {
    const variance = TEN.reduce((sum, d) => sum + (d - 2) ** 2, 0) / 9;
    const expected = Math.sqrt(((4 - variance / 10) / 2 + 2.25) / 2);
    expectNear(answerOf(readerOffset(madePairs(TEN, lark), 1.5).offsetSd), expected, { rel: 1e-12 });
  });
  it("nine shared leave the customary offset: 9 of 10; nobody compared is 0 of 10", () => {
    expect(readerOffset(madePairs(TEN.slice(1), lark), 1.5).offsetSd).toEqual({ kind: "too-few", have: 9, need: 10 });
    expect(readerOffset([], 1.5)).toEqual({ compared: [], offsetSd: { kind: "too-few", have: 0, need: 10 } });
  });
  it("readers who agree keep half of the customary variance: never 0", () => {
    const same = madePairs(
      TEN.map(() => 0),
      lark,
    );
    expectNear(answerOf(readerOffset(same, 1.5).offsetSd), 1.5 / Math.SQRT2, { rel: 1e-12 });
    const alike = madePairs([1, -1, 1, -1, 1, -1, 1, -1, 1, -1], lark);
    expectNear(answerOf(readerOffset(alike, 1.5).offsetSd), 1.5 / Math.SQRT2, { rel: 1e-12 });
  });
});

describe("calibration", () => {
  it("400 academies of 6 readers with offsets of sd 2, each compared with the first on 20 swings: mean variance near 4, within 15 of 100", () => {
    const normal = seededNormals(77);
    let sum = 0;
    for (let academy = 0; academy < 400; academy++) {
      const offsets = Array.from({ length: 6 }, () => 2 * normal());
      const pairs = offsets.slice(1).flatMap((offset, at) =>
        madePairs(
          Array.from({ length: 20 }, () => offset - (offsets[0] as number) + normal() - normal()),
          { firstReader: "r0", reader: `r${at + 1}` },
        ),
      );
      sum += answerOf(readerOffset(pairs, 2).offsetSd) ** 2;
    }
    expectNear(sum / 400, 4, { rel: 0.15 });
  });
});
