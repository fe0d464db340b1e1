import { describe, expect, it } from "vitest";
import type { FairAllocation } from "@/lib/domain/fair-test";
import { allocationOrder } from "@/lib/drills/allocation-order";
import { type FairLookSource, judgeFairTest } from "@/lib/drills/judge-fair-test";
import { monteCarloBand, seededChances, seededNormals } from "../stats/seeded-normals";

/** Forty students of two coaches, whose students gain differently, drawn in turn; the second drill gains `more`. */
function made(seed: number, more: number, students = 40): FairLookSource {
  const normal = seededNormals(seed);
  const orderOf = (coachId: string, places: number) =>
    allocationOrder(seededChances(seed * 2 + (coachId === "a" ? 0 : 1)), places);
  const draws = Array.from({ length: students }, (_, i): FairAllocation => {
    const coachId = i % 3 === 0 ? "a" : "b";
    const place = coachId === "a" ? i / 3 : i - Math.floor(i / 3) - 1;
    const arm = orderOf(coachId, place + 1).flat()[place] ?? 0;
    const at = `2031-01-01T00:00:${String(i).padStart(2, "0")}Z`;
    const of = { testId: "t", studentId: `s${i}`, clubGroup: "iron", day: "2031-01-01", who: "" } as const;
    return { id: `d${i}`, ...of, coachId, place, arm, recordedAt: at };
  });
  const values = draws.map(({ id, arm, coachId }, i) => ({
    allocationId: id,
    look: i < students / 2 ? 0 : 1,
    value: normal() + more * arm + (coachId === "a" ? 6 : 0),
  }));
  return { test: { least: 1 }, draws, values, fractions: [0.5, 1], missing: 0, orderOf, rng: seededChances(seed + 9) };
}
function figures(source: FairLookSource) {
  const got = judgeFairTest(source);
  if (got.kind !== "ok") throw new Error(JSON.stringify(got));
  return got.value;
}

describe("a look at a test by the lot", () => {
  it("a second drill that gains 3 sds more is said to, a first one too; the interval holds the truth", () => {
    const second = figures(made(3, 3));
    expect([second.says, second.have[0] + second.have[1]]).toEqual(["second", 40]);
    expect([(second.low ?? 9) < 3, (second.high ?? 0) > 3]).toEqual([true, true]);
    expect(figures(made(4, -3)).says).toBe("first");
  });
  it("with a wide least worth finding no difference is said to be left; with a narrow one it is open", () => {
    const source = made(5, 0);
    expect(figures({ ...source, test: { least: 3 } }).says).toBe("alike");
    expect(figures({ ...source, test: { least: 0.1 } }).says).toBe("open");
  });
  it("what was given instead changes nothing: only what was drawn is asked, and a draw that isn't its order's throws", () => {
    const source = made(6, 0);
    const [first, ...rest] = source.draws;
    if (!first) throw new Error("none");
    const turned = { ...first, arm: first.arm === 0 ? (1 as const) : (0 as const) };
    expect(() => judgeFairTest({ ...source, draws: [turned, ...rest] })).toThrow("place 0");
  });
  it("a draw without a film keeps its place; one that was erased leaves it empty", () => {
    const source = made(7, 3);
    const less = figures({ ...source, values: source.values.slice(4), missing: 4 });
    expect([less.have[0] + less.have[1], less.missing, less.says]).toEqual([36, 4, "second"]);
    expect(figures({ ...source, draws: source.draws.slice(1) }).have.reduce((sum, n) => sum + n, 0)).toBe(39);
  });
  it("before two of each drill have a film: too few", () => {
    const source = made(8, 0);
    expect(judgeFairTest({ ...source, values: source.values.slice(0, 1), fractions: [0.5] }).kind).toBe("too-few");
  });
  it("an earlier look says the same when it is worked out again with a later one", () => {
    const source = made(9, 1);
    const early = { ...source, values: source.values.filter(({ look }) => look === 0), fractions: [0.5] };
    const again = { ...early, rng: seededChances(18) };
    expect(figures(early)).toEqual(figures(again));
  });
});

describe("calibration", () => {
  it("200 tests of two equal drills by coaches whose students differ: at most 5 of 100 prove one, within 4 standard errors (.062)", () => {
    const runs = 200;
    let proved = 0;
    for (let run = 0; run < runs; run++)
      if (["first", "second"].includes(figures(made(run + 100, 0, 24)).says)) proved++;
    expect(proved / runs).toBeLessThan(0.05 + monteCarloBand(0.05, runs));
  });
});
