import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { cochranArmitage } from "@/lib/stats/cochran-armitage";
import { answerOf, expectNear, readReference } from "@/tests/reference/read-reference";
import { monteCarloBand, seededChances } from "./seeded-normals";

describe("reference", () => {
  it("Fleiss (1981), p. 139, smokers among patients: z squared 8.2249 (R prop.trend.test)", () => {
    const [one] = readReference<
      { events: number[]; n: number[]; scores: number[] },
      { z: number; chi2: number; p_two_sided: number }
    >("06b_two_group_tests", "fleiss_smokers");
    if (!one) throw new Error("missing");
    const { events, n, scores } = one.input;
    const got = answerOf(
      cochranArmitage(
        events.map((successes, i) => ({ successes, trials: n[i] as number, score: scores[i] as number })),
      ),
    );
    expectNear(got.z, one.expected.z, one.tolerance, "z");
    expectNear(got.z ** 2, one.expected.chi2, one.tolerance, "chi-square");
    expectNear(got.p, one.expected.p_two_sided, one.tolerance, "p");
  });
});

describe("too little and bad input", () => {
  const group = (successes: number, trials: number, score: number) => ({ successes, trials, score });
  it("one score with trials is 1 of 2; all successes are 1 of 2 outcomes; nothing is 0 of 2", () => {
    expect(cochranArmitage([group(1, 2, 1), group(0, 0, 2)])).toEqual({ kind: "too-few", have: 1, need: 2 });
    expect(cochranArmitage([group(2, 2, 1), group(3, 3, 2)])).toEqual({ kind: "too-few", have: 1, need: 2 });
    expect(cochranArmitage([])).toEqual({ kind: "too-few", have: 0, need: 2 });
  });
  it("more successes than trials, half a trial and a NaN score are refused", () => {
    expect(() => cochranArmitage([group(3, 2, 1)])).toThrow("got 3");
    expect(() => cochranArmitage([group(0, 0.5, 1)])).toThrow("got 0.5");
    expect(() => cochranArmitage([group(1, 2, Number.NaN)])).toThrow("scores[0]");
  });
});

describe("invariance", () => {
  const groups = fc.array(
    fc
      .tuple(fc.integer({ min: 0, max: 9 }), fc.integer({ min: 0, max: 9 }), fc.integer({ min: 0, max: 5 }))
      .map(([successes, failures, score]) => ({ successes, trials: successes + failures, score })),
    { minLength: 2, maxLength: 7 },
  );
  it("order, splitting a group and moving the scores change nothing; failures for successes turn the sign", () => {
    fc.assert(
      fc.property(groups, (list) => {
        const before = cochranArmitage(list);
        const single = list.flatMap(({ successes, trials, score }) =>
          Array.from({ length: trials }, (_, i) => ({
            successes: i < successes ? 1 : 0,
            trials: 1,
            score: 2 * score + 7,
          })),
        );
        const split = cochranArmitage(single.reverse());
        const turned = cochranArmitage(list.map((one) => ({ ...one, successes: one.trials - one.successes })));
        expect([split.kind, turned.kind]).toEqual([before.kind, before.kind]);
        if (before.kind !== "ok") return;
        expectNear(answerOf(split).z, before.value.z, { rel: 1e-10, abs: 1e-12 });
        expectNear(answerOf(turned).z, -before.value.z, { rel: 1e-10, abs: 1e-12 });
      }),
    );
  });
});

describe("calibration", () => {
  it("4000 draws of 4 groups of 50 at 0.3: p is below 0.05 in 5 of 100, within 4 x 0.0034", () => {
    const chance = seededChances(1955);
    const runs = 4000;
    let alarms = 0;
    for (let run = 0; run < runs; run++) {
      const drawn = [1, 2, 3, 4].map((score) => {
        let successes = 0;
        for (let i = 0; i < 50; i++) if (chance() < 0.3) successes++;
        return { successes, trials: 50, score };
      });
      if (answerOf(cochranArmitage(drawn)).p < 0.05) alarms++;
    }
    expectNear(alarms / runs, 0.05, { abs: monteCarloBand(0.05, runs) });
  });
});
