import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { exactSegmentation } from "@/lib/stats/exact-segmentation";
import { answerOf, expectNear, type ReferenceCase, readNile, readReference } from "@/tests/reference/read-reference";

interface Input {
  readonly y: number[] | string;
  readonly min_segment?: number;
}
interface Cut {
  readonly changes: number;
  readonly sse: number;
  readonly last_index_of_each_segment_but_the_final: number[];
}
interface Penalised extends Omit<Cut, "sse"> {
  readonly penalty_per_change: number;
  readonly objective: number;
}

/** "see 03c nile_mk" points to the Nile. A last index counted from 1 is the next stretch's first counted from 0. */
function valuesOf(y: number[] | string): readonly number[] {
  return typeof y === "string" ? readNile() : y;
}

function squaresOf(values: readonly number[]): number {
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  return values.reduce((sum, value) => sum + (value - mean) ** 2, 0);
}

/** Every way to cut, written out. */
function everyCut(
  values: readonly number[],
  changes: number,
  shortest: number,
  from = 0,
): { squares: number; starts: number[] }[] {
  if (changes === 0) {
    return values.length - from >= shortest ? [{ squares: squaresOf(values.slice(from)), starts: [] }] : [];
  }
  const all: { squares: number; starts: number[] }[] = [];
  for (let next = from + shortest; next < values.length; next++) {
    const first = squaresOf(values.slice(from, next));
    for (const rest of everyCut(values, changes - 1, shortest, next)) {
      all.push({ squares: first + rest.squares, starts: [next, ...rest.starts] });
    }
  }
  return all;
}

describe("reference", () => {
  const cases = readReference<Input, Cut[]>("04b_segmentation").filter((one) => one.id !== "page_pelt");

  it.each(cases)("$id: the best cuts for 0 to 4 changes, the Nile's first at 1899 (Cobb 1978)", (one) => {
    for (const cut of one.expected) {
      const got = answerOf(exactSegmentation(valuesOf(one.input.y), cut.changes, one.input.min_segment ?? 1));
      expectNear(got.squares, cut.sse, one.tolerance, `${cut.changes} changes`);
      expect(got.starts).toEqual(cut.last_index_of_each_segment_but_the_final);
    }
  });

  it("page_pelt (data of Pettitt 1979): with a price a change, one change at index 17, none at a price of 20", () => {
    const [one] = readReference<Input, Penalised[]>("04b_segmentation", "page_pelt") as [
      ReferenceCase<Input, Penalised[]>,
    ];
    for (const { penalty_per_change: price, ...expected } of one.expected) {
      const cuts = [0, 1, 2, 3].map((k) => answerOf(exactSegmentation(valuesOf(one.input.y), k, 1)));
      const costs = cuts.map((cut, k) => cut.squares + price * k);
      const best = costs.indexOf(Math.min(...costs));
      expectNear(costs[best] as number, expected.objective, one.tolerance, "objective");
      expect(best).toBe(expected.changes);
      expect(cuts[best]?.starts).toEqual(expected.last_index_of_each_segment_but_the_final);
    }
  });

  it.each(readReference<Input, { Tmax: number; last_index_before_change: number }>("04a_changepoint_tests", "maxt"))(
    "$id (Hawkins, Qiu & Kang 2003): one change cuts where |t| is largest, t^2 = (SS0 - SS1)(n - 2)/SS1",
    (one) => {
      const values = valuesOf(one.input.y);
      const none = answerOf(exactSegmentation(values, 0, 1)).squares;
      const cut = answerOf(exactSegmentation(values, 1, 1));
      expect(cut.starts).toEqual([one.expected.last_index_before_change]);
      expectNear(
        Math.sqrt(((none - cut.squares) * (values.length - 2)) / cut.squares),
        one.expected.Tmax,
        one.tolerance,
      );
    },
  );
});

describe("too little and bad input", () => {
  it("two changes with stretches of 3 take 9 values: 8 are too few", () => {
    expect(exactSegmentation([1, 2, 3, 4, 5, 6, 7, 8], 2, 3)).toEqual({ kind: "too-few", have: 8, need: 9 });
    expect(exactSegmentation([], 0, 1)).toEqual({ kind: "too-few", have: 0, need: 1 });
  });

  it("NaN, half a change and stretches of 0 are refused", () => {
    expect(() => exactSegmentation([1, Number.NaN], 0, 1)).toThrow("values[1]");
    expect(() => exactSegmentation([1, 2], 0.5, 1)).toThrow("changes must be whole, 0 or more, got 0.5");
    expect(() => exactSegmentation([1, 2], 0, 0)).toThrow("shortest must be whole, 1 or more, got 0");
  });
});

describe("invariance", () => {
  const list = fc.array(fc.integer({ min: -20, max: 20 }), { minLength: 1, maxLength: 9 });

  it("no cut written out is better, and its own squares are what it says, brute force up to 9 values", () => {
    fc.assert(
      fc.property(list, fc.integer({ min: 0, max: 3 }), fc.integer({ min: 1, max: 3 }), (values, changes, shortest) => {
        const brute = everyCut(values, changes, shortest);
        const got = exactSegmentation(Object.freeze(values), changes, shortest);
        expect(got.kind).toBe(brute.length > 0 ? "ok" : "too-few");
        if (got.kind !== "ok") return;
        const least = Math.min(...brute.map((cut) => cut.squares));
        const same = brute.find((cut) => cut.starts.join() === got.value.starts.join());
        expectNear(got.value.squares, least, { abs: 1e-9 });
        expectNear(same?.squares ?? Number.NaN, least, { abs: 1e-9 });
      }),
    );
  });

  it("turning the list round, shifting and scaling it change the squares by the scale squared alone", () => {
    fc.assert(
      fc.property(list, fc.integer({ min: 0, max: 3 }), (values, changes) => {
        const one = exactSegmentation(values, changes, 1);
        if (one.kind !== "ok") return;
        const other = answerOf(
          exactSegmentation(
            [...values].reverse().map((value) => 100 - 3 * value),
            changes,
            1,
          ),
        );
        expectNear(other.squares, 9 * one.value.squares, { abs: 1e-8 });
      }),
    );
  });
});
