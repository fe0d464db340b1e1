import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { linearFit } from "@/lib/stats/linear-fit";
import { answerOf, expectAllNear, expectNear, readReference } from "@/tests/reference/read-reference";
import { monteCarloBand, seededNormals } from "./seeded-normals";

interface Input {
  readonly y: number[];
  readonly x: number[];
}
interface Expected {
  readonly beta: [number, number];
  readonly se: [number, number];
  readonly residual_sd: number;
}

describe("reference", () => {
  it.each(readReference<Input, Expected>("03a_linear_nist", "nist_linear_norris"))(
    "$id (NIST, certified): line and errors",
    (one) => {
      const fit = answerOf(linearFit(one.input.x, one.input.y));
      expectAllNear([fit.intercept, fit.slope], one.expected.beta, one.tolerance, "line");
      expectAllNear([fit.interceptStandardError, fit.slopeStandardError], one.expected.se, one.tolerance, "errors");
      expectNear(fit.residualSd, one.expected.residual_sd, one.tolerance, "residual sd");
    },
  );

  it("1, 2, 2 at 1, 2, 3: slope 1/2 plus or minus 12.7062 x 0.288675 = 3.66796, by hand with one degree of freedom", () => {
    const fit = answerOf(linearFit([1, 2, 3], [1, 2, 2]));
    expectNear(fit.slope, 0.5, { rel: 1e-14 });
    expectNear(fit.slopeHigh95, 0.5 + 12.706204736174694 / Math.sqrt(12), { rel: 1e-12 });
    expectNear(fit.slopeLow95, 0.5 - 12.706204736174694 / Math.sqrt(12), { rel: 1e-12 });
    expect(fit.degrees).toBe(1);
  });
});

describe("too little and bad input", () => {
  it("two points are 2 of 3; three on one place are 1 of 2 independent terms", () => {
    expect(linearFit([1, 2], [1, 2])).toEqual({ kind: "too-few", have: 2, need: 3 });
    expect(linearFit([4, 4, 4], [1, 2, 3])).toEqual({ kind: "too-few", have: 1, need: 2 });
  });

  it("unequal lengths and infinity are refused", () => {
    expect(() => linearFit([1, 2], [1, 2, 3])).toThrow("must have 3 values, got 2");
    expect(() => linearFit([1, 2, 3], [1, Number.POSITIVE_INFINITY, 3])).toThrow("y[1]");
  });
});

describe("invariance", () => {
  const points = fc.array(fc.tuple(fc.integer({ min: -99, max: 99 }), fc.integer({ min: -99, max: 99 })), {
    minLength: 4,
    maxLength: 20,
  });

  it("mirroring y mirrors the slope's interval; order is nothing; stretching x by 4 shrinks the slope by 4", () => {
    fc.assert(
      fc.property(points, (list) => {
        const one = linearFit(
          list.map(([x]) => x),
          list.map(([, y]) => y),
        );
        if (one.kind !== "ok") return;
        const back = [...list].reverse();
        const other = answerOf(
          linearFit(
            back.map(([x]) => 4 * x),
            back.map(([, y]) => -y),
          ),
        );
        const room = { rel: 1e-10, abs: 1e-10 };
        expectNear(other.slope, -one.value.slope / 4, room);
        expectNear(other.slopeLow95, -one.value.slopeHigh95 / 4, room);
        expectNear(other.slopeHigh95, -one.value.slopeLow95 / 4, room);
      }),
    );
  });
});

describe("calibration", () => {
  it("8 uneven points on slope 0.3: the 95 of 100 interval holds it in 0.95 +/- 4 x 0.0049 of 2000 runs", () => {
    const normal = seededNormals(11);
    const x = [0, 1, 4, 6, 11, 20, 21, 40];
    const runs = 2000;
    let held = 0;
    for (let run = 0; run < runs; run++) {
      const fit = answerOf(
        linearFit(
          x,
          x.map((v) => 5 + 0.3 * v + 2 * normal()),
        ),
      );
      if (fit.slopeLow95 <= 0.3 && 0.3 <= fit.slopeHigh95) held++;
    }
    expectNear(held / runs, 0.95, { abs: monteCarloBand(0.95, runs) }, "cover");
  });
});
