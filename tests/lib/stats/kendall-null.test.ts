import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { kendallNull } from "@/lib/stats/kendall-null";
import { expectNear, readReference } from "@/tests/reference/read-reference";

/** Chances of each number of falling pairs, by writing out every order. */
function everyOrder(tieSizes: readonly number[]): number[] {
  const values = tieSizes.flatMap((size, value) => new Array<number>(size).fill(value));
  const counts: number[] = [];
  let orders = 0;
  const place = (done: number[], left: number[]): void => {
    if (left.length === 0) {
      const falls = done.reduce((sum, a, i) => sum + done.slice(i + 1).filter((b) => b < a).length, 0);
      counts[falls] = (counts[falls] ?? 0) + 1;
      orders++;
    }
    left.forEach((value, i) => {
      place([...done, value], left.toSpliced(i, 1));
    });
  };
  place([], values);
  return Array.from(counts, (count) => (count ?? 0) / orders);
}

describe("reference: Gilbert (1987), Table A18, recomputed exactly", () => {
  it.each(readReference<{ n: number }, Record<string, number>>("03c_trend", "kendall_null"))(
    "$id: chance of S at least s",
    (one) => {
      const { pairs, chances } = kendallNull(new Array(one.input.n).fill(1));
      expect(pairs).toBe((one.input.n * (one.input.n - 1)) / 2);
      for (const [s, expected] of Object.entries(one.expected)) {
        const tail = chances.reduce((sum, chance, d) => (pairs - 2 * d >= Number(s) ? sum + chance : sum), 0);
        expectNear(tail, expected, one.tolerance, `S >= ${s}`);
      }
    },
  );
});

describe("too little and bad input", () => {
  it("one value has no pair: S is 0 for certain", () => {
    expect(kendallNull([1])).toEqual({ pairs: 0, chances: [1] });
    expect(kendallNull([6])).toEqual({ pairs: 0, chances: [1] });
  });

  it("no value, a size of 0 and half a size are refused", () => {
    expect(() => kendallNull([])).toThrow("got none");
    expect(() => kendallNull([2, 0])).toThrow("got 0");
    expect(() => kendallNull([1.5])).toThrow("got 1.5");
  });
});

describe("invariance", () => {
  it("equals writing out every order, ties and all, brute force up to 7 values", () => {
    const sizes = fc.array(fc.integer({ min: 1, max: 3 }), { minLength: 1, maxLength: 4 });
    fc.assert(
      fc.property(sizes, (tieSizes) => {
        fc.pre(tieSizes.reduce((sum, size) => sum + size, 0) <= 7);
        const brute = everyOrder(tieSizes);
        const { chances } = kendallNull(tieSizes);
        brute.forEach((chance, d) => {
          expectNear(chances[d] as number, chance, { abs: 1e-14 });
        });
        expect(chances.length).toBe(brute.length);
      }),
      { numRuns: 40 },
    );
  });

  it("50 values: chances sum to 1 and mirror, S and -S alike", () => {
    const { chances } = kendallNull(new Array(50).fill(1));
    expectNear(
      chances.reduce((sum, chance) => sum + chance, 0),
      1,
      { rel: 1e-12 },
    );
    chances.forEach((chance, d) => {
      expectNear(chance, chances[chances.length - 1 - d] as number, { rel: 1e-10 });
    });
  });
});
