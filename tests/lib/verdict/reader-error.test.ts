import { describe, expect, it } from "vitest";
import { readerError } from "@/lib/verdict/reader-error";
import { answerOf, expectNear, readReference } from "@/tests/reference/read-reference";
import { monteCarloBand, seededNormals } from "../stats/seeded-normals";
import { madePairs } from "./made-rereads";

const TEN = [1, -1, 2, -2, 0.5, -0.5, 1, -1, 1.5, -1.5];
/** Sum of the squares of TEN: 4 x 1 + 2 x 4 + 2 x 0.25 + 2 x 2.25 = 17. */
const SQUARES = 17;

describe("what takes the customary error's place", () => {
  it("ten pairs of level (b): (4 x 1.5² + 10 x 17/20) / 14 = 1.25, root 1.118", () => {
    const got = readerError(madePairs(TEN), 1.5, 1.5);
    expectNear(answerOf(got.readerSd), Math.sqrt((4 * 2.25 + (10 * SQUARES) / 20) / 14), { rel: 1e-12 });
  });
  it("nine pairs, or any number of level (a), leave it: 9 of 10, 0 of 10", () => {
    const nine = readerError(madePairs(TEN.slice(1)), 1.5, 1.5);
    expect(nine.readerSd).toEqual({ kind: "too-few", have: 9, need: 10 });
    const still = readerError(madePairs([...TEN, ...TEN], { level: "a" }), 1.5, 1.5);
    expect(still.readerSd).toEqual({ kind: "too-few", have: 0, need: 10 });
    expect([still.sameStill.pairs, still.sameFilm.pairs]).toEqual([20, 0]);
  });
  it("the bias is left in: all ten 3 too high by the second time is (4 x 1 + 10 x 9/2) / 14, where the typical error is none", () => {
    const got = readerError(madePairs(TEN.map(() => 3)), 1, 1.5);
    expectNear(answerOf(got.readerSd), Math.sqrt((4 + 45) / 14), { rel: 1e-12 });
    expect(got.sameFilm.pooled).toEqual({ kind: "too-few", have: 0, need: 1 });
  });
  it("is never 0: a thousand equal whole numbers keep 5 / sqrt 12, tenths 0.1 / sqrt 12", () => {
    const same = (value: number) =>
      Array.from({ length: 1000 }, () => ({ ...madePairs([0])[0], first: value, again: value }));
    const whole = same(85) as ReturnType<typeof madePairs>;
    expectNear(answerOf(readerError(whole, 0.01, 1.5).readerSd), 5 / Math.sqrt(12), { rel: 1e-12 });
    const tenths = same(0.3) as ReturnType<typeof madePairs>;
    expectNear(answerOf(readerError(tenths, 1e-6, 1.5).readerSd), 0.1 / Math.sqrt(12), { rel: 1e-9 });
  });
  it("Bland & Altman (1986), 17 people read twice by the large meter: (4 x 20² + 17 x 15.3²) / 21", () => {
    const [one] = readReference<{ first: number[]; second: number[] }, { sem: number }>(
      "01c_reliability",
      "pefr_repeat",
    );
    if (!one) throw new Error("missing");
    const pairs = one.input.first.map((first, i) => ({
      ...(madePairs([0])[0] as ReturnType<typeof madePairs>[number]),
      first,
      again: one.input.second[i] as number,
    }));
    const expected = Math.sqrt((4 * 400 + 17 * one.expected.sem ** 2) / 21);
    expectNear(answerOf(readerError(pairs, 20, 1.5).readerSd), expected, { rel: 1e-9 });
  });
});

describe("each reader", () => {
  const lark = { reader: "Lark", firstReader: "Lark" };
  const pairs = [...madePairs(TEN), ...madePairs([4, -4], lark)];
  it("is drawn toward all: Lark's two pairs of 4 weigh 2 against 10", () => {
    const got = readerError(pairs, 1.5, 1.5);
    const pooled = (4 * 2.25 + (SQUARES + 32) / 2) / 16;
    expectNear(answerOf(got.readerSd), Math.sqrt(pooled), { rel: 1e-12 });
    expect(got.sameFilm.readers.map((each) => [each.reader, each.pairs])).toEqual([
      ["Lark", 2],
      ["Wren", 10],
    ]);
    expectNear(got.sameFilm.readers[0]?.shrunken ?? 0, Math.sqrt((10 * pooled + 2 * 8) / 12), { rel: 1e-12 });
    expectNear(got.sameFilm.readers[1]?.shrunken ?? 0, Math.sqrt((10 * pooled + SQUARES / 2) / 20), { rel: 1e-12 });
  });
  it("what one reader read first and another again measures no single reader", () => {
    const mixed = readerError(madePairs(TEN, { reader: "Lark" }), 1.5, 1.5);
    expect([mixed.sameFilm.pairs, mixed.sameStill.pairs]).toEqual([0, 0]);
    expect(mixed.compared.map((each) => [each.readers, each.swings])).toEqual([[["Lark", "Wren"], 10]]);
  });
  it("the order of the pairs changes nothing, and doubling everything doubles every sd", () => {
    const got = readerError(pairs, 1.5, 1.5);
    const moved = [...pairs].reverse().map((pair) => ({ ...pair, first: 2 * pair.first, again: 2 * pair.again }));
    const twice = readerError(moved, 3, 1.5);
    expectNear(answerOf(twice.readerSd), 2 * answerOf(got.readerSd), { rel: 1e-12 });
    twice.sameFilm.readers.forEach((each, at) => {
      expectNear(each.shrunken ?? 0, 2 * (got.sameFilm.readers[at]?.shrunken ?? 0), { rel: 1e-12 });
    });
  });
});

describe("calibration", () => {
  it("600 academies of 4 readers, sds 1.5 with a scatter of 3 in 10, 8 pairs each: shrunk errors miss by less than raw ones; 95 of 100 intervals hold, within 4 x 0.0044", () => {
    const normal = seededNormals(41);
    const missed = { raw: 0, shrunken: 0 };
    let held = 0;
    for (let academy = 0; academy < 600; academy++) {
      const sds = [0, 1, 2, 3].map(() => 1.5 * Math.exp(0.3 * normal()));
      const pairs = sds.flatMap((sd, at) =>
        madePairs(
          Array.from({ length: 8 }, () => sd * (normal() - normal())),
          { reader: `r${at}`, firstReader: `r${at}` },
        ),
      );
      const { readers } = readerError(pairs, 1.5, 1.5).sameFilm;
      readers.forEach(({ error, shrunken }, at) => {
        const sd = sds[at] as number;
        const { whole, low, high } = answerOf(error);
        missed.raw += Math.log(whole / sd) ** 2;
        missed.shrunken += Math.log((shrunken ?? 0) / sd) ** 2;
        if (low < sd && sd < high) held++;
      });
    }
    expect(missed.shrunken).toBeLessThan(0.75 * missed.raw);
    expectNear(held / 2400, 0.95, { abs: monteCarloBand(0.95, 2400) });
  });
});
