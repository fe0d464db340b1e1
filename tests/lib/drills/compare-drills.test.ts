import { describe, expect, it } from "vitest";
import type { ComparedTrack } from "@/lib/domain/compared-track";
import { compareDrills } from "@/lib/drills/compare-drills";
import { POLICY } from "@/lib/verdict/policy";
import { drawAcademy, type SimulatedAcademy, UNIT_SD } from "@/tests/calibration/drills-population";
import { expectNear, readReference } from "@/tests/reference/read-reference";
import { dayOf, madeCompared } from "./made-academy";

interface Anorexia {
  readonly group: Readonly<Record<string, number>>;
  readonly before: readonly number[];
  readonly after: readonly number[];
}
interface Printed {
  readonly contFromCbt: number;
  readonly ftFromCbt: number;
  readonly meanAfter: Readonly<Record<string, number>>;
  readonly meanChange: Readonly<Record<string, number>>;
}

describe("an open data set through the whole comparison: 72 girls weighed before and after (Hand and others 1993, no. 285)", () => {
  const [one] = readReference<Anorexia, Printed>("11_anorexia");
  const { input, expected } = one as { input: Anorexia; expected: Printed };
  const groups = Object.entries(input.group).flatMap(([name, count]) => Array.from({ length: count }, () => name));
  const tracks = groups.map((group, at) =>
    madeCompared(`g${at}`, [input.before[at] as number, input.after[at] as number], {
      unit: "lb",
      ...(group === "Cont"
        ? { waiting: [{ from: dayOf(1), to: dayOf(2) }] }
        : { drills: [{ drill: group, start: dayOf(1) }] }),
    }),
  );
  const found = compareDrills(tracks, POLICY);
  const drill = (name: string) => found.drills.find((result) => result.drill === name);

  it("effects against the untreated are those of R's analysis of covariance, to the digits printed", () => {
    expectNear(drill("CBT")?.effect?.estimate ?? 0, -expected.contFromCbt, { abs: 0.00005 });
    expectNear(drill("FT")?.effect?.estimate ?? 0, expected.ftFromCbt - expected.contFromCbt, { abs: 0.0001 });
  });
  it("the untreated came back by the printed mean, and the means after are the printed ones", () => {
    expect(found.reference).toMatchObject({ kind: "waiting", students: 26 });
    if (found.reference.kind !== "none") expectNear(found.reference.cameBack.estimate, -0.45, { abs: 0.0005 });
    for (const { drill: name, after } of found.beforeAfter)
      expectNear(after, expected.meanAfter[name] ?? 0, { abs: 0.005 });
  });
  it("the family treatment works; what is said rests on the interval and on Holm", () => {
    expect(drill("FT")?.says).toBe("works");
    expect(drill("FT")?.effect?.low95).toBeGreaterThan(0);
    expect(found.drills.map(({ drill: name, students }) => [name, students])).toEqual([
      ["CBT", 29],
      ["FT", 17],
    ]);
  });
});

const ACADEMY: SimulatedAcademy = {
  ...{ name: "two real", students: 240, effects: [0, 0.8, 0, 0, 0, 0, 0, 0], naturalRate: 0.04 },
  ...{ leastDrilled: 0.5, waiting: "marked", effectSpread: 0, hiddenChoice: "none" },
};
const academy = drawAcademy(ACADEMY, 4242);

describe("a simulated academy whose second drill is worth .8 U", () => {
  const found = compareDrills(academy, POLICY);

  it("says that it works and of no other drill", () => {
    expect(found.drills.filter(({ says }) => says === "works").map(({ drill }) => drill)).toEqual(["d1"]);
    const effect = found.drills.find(({ drill }) => drill === "d1")?.effect;
    expect(effect?.low95).toBeLessThan(0.8 * UNIT_SD);
    expect(effect?.high95).toBeGreaterThan(0.8 * UNIT_SD);
  });
  it("before and after alone flatters: useless drills seem to gain, and the reference came back by itself", () => {
    const useless = found.beforeAfter.filter(({ drill, students }) => drill !== "d1" && students >= 20);
    expect(useless.length).toBeGreaterThan(0);
    for (const { change } of useless) expect(change?.low95).toBeGreaterThan(0);
    if (found.reference.kind !== "none") expect(found.reference.cameBack.low95).toBeGreaterThan(0);
  });
  it("order of the tracks is nothing", () => {
    const turned = compareDrills(academy.toReversed(), POLICY);
    expect(turned.drills.map(({ drill, says }) => [drill, says])).toEqual(
      found.drills.map(({ drill, says }) => [drill, says]),
    );
  });
  it("where down is better and every value is mirrored, the same is said to the last digit", () => {
    const mirrored = academy.map((track) => ({
      ...track,
      better: "down" as const,
      sessions: track.sessions.map((session) => ({ ...session, swings: session.swings.map((swing) => -swing) })),
    }));
    const { drills } = compareDrills(mirrored, POLICY);
    drills.forEach((result, at) => {
      expectNear(result.effect?.estimate ?? 0, found.drills[at]?.effect?.estimate ?? 0, { abs: 1e-9 });
    });
  });
  it("sessions set aside for their camera change nothing", () => {
    const wild: ComparedTrack["sessions"] = [{ date: dayOf(3), captureSd: 1, swings: [500], use: false }];
    const beside = academy.map((track) => ({ ...track, sessions: [...wild, ...track.sessions] }));
    expect(compareDrills(beside, POLICY)).toEqual(found);
  });
  it("sensitivity: every range holds its estimate or lies beside it by less than an interval", () => {
    expect(found.sensitivity.length).toBeGreaterThanOrEqual(5);
    for (const { drill, studentLeftOut, coachLeftOut, hiddenReason } of found.sensitivity) {
      const effect = found.drills.find((result) => result.drill === drill)?.effect;
      expect(studentLeftOut?.low).toBeLessThanOrEqual(effect?.estimate ?? Number.NaN);
      expect(studentLeftOut?.high).toBeGreaterThanOrEqual(effect?.estimate ?? Number.NaN);
      expect(coachLeftOut).not.toBeNull();
      expect(hiddenReason?.estimate).toBeGreaterThanOrEqual(hiddenReason?.interval ?? Number.NaN);
    }
  });
});

describe("what may be said", () => {
  it("nobody marked as waiting: no drill is said to work, and the reference is called by its name", () => {
    const unmarked = academy.map(({ waiting: _, ...track }) => track);
    const found = compareDrills(unmarked, POLICY);
    expect(found.reference).toMatchObject({ kind: "no-drill-recorded" });
    expect(found.drills.filter(({ says }) => says === "works")).toEqual([]);
    expect(found.caveats.map(({ code }) => code)).toContain("not-marked");
  });
  it("seven without a drill: none to compare with; each drill stands against the others and none works", () => {
    const without = academy.filter(({ drills }) => drills.length === 0).slice(0, 7);
    const found = compareDrills([...without, ...academy.filter(({ drills }) => drills.length > 0)], POLICY);
    expect(found.reference).toMatchObject({ kind: "none", need: 8 });
    expect(found.drills.every(({ against }) => against === "other-drills")).toBe(true);
    expect(found.drills.filter(({ says }) => says === "works")).toEqual([]);
    expect(found.drills.find(({ drill }) => drill === "d1")?.effect?.low95).toBeGreaterThan(0);
  });
  it("four on a drill: no effect; nine: an effect and too few; no track at all: nothing", () => {
    const on = (name: string, count: number) =>
      academy
        .filter(({ drills }) => drills[0]?.drill === "d0")
        .slice(0, count)
        .map((track) => ({ ...track, drills: track.drills.map((one) => ({ ...one, drill: name })) }));
    const waiters = academy.filter(({ drills }) => drills.length === 0);
    const four = compareDrills([...waiters, ...on("few", 4)], POLICY).drills[0];
    expect(four).toMatchObject({ students: 4, effect: null, pAdjusted: null, says: "too-few" });
    const nine = compareDrills([...waiters, ...on("some", 9)], POLICY).drills[0];
    expect(nine).toMatchObject({ students: 9, says: "too-few" });
    expect(nine?.effect).not.toBeNull();
    const nothing = compareDrills([], POLICY);
    expect(nothing).toMatchObject({ drills: [], beforeAfter: [], reference: { kind: "none", have: 0 } });
  });
  it("a drill that one coach alone gives to all of her students can't be told from her", () => {
    const own = academy.map((track) => ({
      ...track,
      ...(track.coach === "c0" && track.drills[0] ? { drills: [{ ...track.drills[0], drill: "hers" }] } : {}),
    }));
    const alone = own.filter(({ coach, drills }) => coach !== "c0" || drills.length > 0);
    const hers = compareDrills(alone, POLICY).drills.find(({ drill }) => drill === "hers");
    expect(hers).toMatchObject({ effect: null, says: "cant-tell" });
  });
  it("of one group among several nothing is said to work by what choosing the group could have made", () => {
    const alone = compareDrills(academy, POLICY).drills;
    const chosen = compareDrills(academy, POLICY, 7).drills;
    for (const [at, { pAdjusted, effect }] of alone.entries()) {
      expect(chosen[at]?.pAdjusted ?? null).toBe(pAdjusted === null ? null : Math.min(1, 7 * pAdjusted));
      expect(chosen[at]?.effect).toEqual(effect);
    }
    expect(alone.some(({ says }) => says === "works")).toBe(true);
    expect(compareDrills(academy, POLICY, 1e12).drills.filter(({ says }) => says === "works")).toEqual([]);
  });
});
