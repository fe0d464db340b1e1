import { describe, expect, it } from "vitest";
import { compareDrills } from "@/lib/drills/compare-drills";
import type { Comparison, Estimate } from "@/lib/drills/comparison";
import { POLICY } from "@/lib/verdict/policy";
import { expectNear } from "@/tests/reference/read-reference";
import { repeatedPeople, repeatedTrial } from "./repeated-people";

// 100 people of a randomised trial, a value before and up to four after (R HSAUR::BtheB). Figures: R 4.2.2 (lm, sandwich,
// lme4), tests/reference/scripts/repeated_bdi.R.
const { trial, figures } = repeatedTrial();
const people = repeatedPeople(trial);
const found = compareDrills(people, POLICY);
const EXACT = { rel: 1e-8 };

function only(comparison: Comparison): Comparison["drills"][number] {
  const [drill, ...others] = comparison.drills;
  if (drill === undefined || others.length > 0) throw new Error(`one drill, got ${comparison.drills.length}`);
  return drill;
}

function expectEstimate(actual: Estimate | null, expected: Estimate): void {
  expectNear(actual?.estimate ?? Number.NaN, expected.estimate, EXACT, "estimate");
  expectNear(actual?.low95 ?? Number.NaN, expected.low95, EXACT, "low95");
  expectNear(actual?.high95 ?? Number.NaN, expected.high95, EXACT, "high95");
}

describe("an open trial with repeated measures through the whole comparison, against R", () => {
  it("the effect: R's least squares on one mean a person, its HC3 errors, t on the treated and three more: 52 + 3", () => {
    expectEstimate(only(found).effect, figures.effect);
    expectNear(only(found).pAdjusted ?? Number.NaN, figures.effect.p, EXACT, "one drill: Holm takes nothing off");
  });
  it("what stays: the visits one and three months after the end, not that at the end nor that after six", () => {
    expectEstimate(only(found).retained, figures.retained);
  });
  it("the untreated came back by R's mean change and its t interval; the treated moved by theirs", () => {
    expect(found.reference.kind).toBe("waiting");
    if (found.reference.kind !== "none") expectEstimate(found.reference.cameBack, figures.cameBack);
    expectNear(found.beforeAfter[0]?.change?.estimate ?? Number.NaN, figures.gained, EXACT);
  });
  it("with one person left out the estimate lies between R's lowest and highest", () => {
    const range = found.sensitivity[0]?.studentLeftOut;
    expectNear(range?.low ?? Number.NaN, figures.effect.leftOut[0], EXACT);
    expectNear(range?.high ?? Number.NaN, figures.effect.leftOut[1], EXACT);
  });
  it("the interval holds 0, so it isn't said to work; it ends below 1.5 sds of a visit, so as much as that is ruled out", () => {
    expectNear(found.smallestWorthwhile ?? Number.NaN, 1.5 * figures.visitSd, EXACT);
    expect(figures.effect.high95).toBeLessThan(1.5 * figures.visitSd);
    expect(only(found)).toMatchObject({ says: "no-better", students: 52, byChance: 52, against: "waiting" });
  });
  it("where 3 points are worth having, which the interval holds too, nothing can be told", () => {
    const asked = people.map((track) => ({ ...track, smallestWorthwhile: 3 }));
    expect(only(compareDrills(asked, POLICY))).toMatchObject({ says: "cant-tell", effect: only(found).effect });
  });
});

describe("against the random-intercept model of the same data", () => {
  it("where nobody missed a visit it is that model's estimate: with as many values each, all people weigh the same", () => {
    const every = people.filter(({ sessions }) => sessions.length === 5);
    expect(every).toHaveLength(figures.complete.people);
    // lme4 searches for the variances; in whole rows the estimate doesn't hang on them.
    expectNear(only(compareDrills(every, POLICY)).effect?.estimate ?? Number.NaN, figures.complete.estimate, {
      rel: 1e-7,
    });
  });
  it("with missed visits it is printed as 2.3590 with error 1.7084; ours, where all people weigh the same, lies within a tenth of that error", () => {
    // Published: table 9.9 of the examples to Vehkalahti & Everitt 2019; R gives the same from the data of this file.
    expectNear(figures.mixed.estimate, -2.359, { abs: 0.00005 });
    expectNear(figures.mixed.error, 1.7084, { abs: 0.00005 });
    expectNear(only(found).effect?.estimate ?? Number.NaN, 2.359, { abs: 0.17084 });
  });
});

describe("visits that were not made", () => {
  it("three with no visit after are left out and counted; nobody else is", () => {
    const none = trial.after.filter((visits) => visits.every((value) => value === null));
    expect(none).toHaveLength(3);
    expect(found.students).toBe(figures.effect.people);
    expect(found.caveats).toContainEqual({ code: "no-after", count: 3 });
    expect(found.caveats).toContainEqual({ code: "few-after", count: 97 });
  });
  it("every visit that was made counts: of the treated, as many as are on file", () => {
    const made = trial.after.flatMap((visits, person) => (trial.treated[person] === 1 ? visits : []));
    expect(only(found).sessions).toBe(made.filter((value) => value !== null).length);
  });
  it("what stays is said of fewer, and how many: the treated with a visit one or three months after the end", () => {
    const stayed = trial.after.filter(
      ([, one, three], person) => trial.treated[person] === 1 && (one !== null || three !== null),
    );
    expect(stayed.length).toBeLessThan(52);
    expect(only(found).retainedStudents).toBe(stayed.length);
  });
  it("a visit on file with nothing read, set aside, is as one not made", () => {
    const listed = people.map((track) => ({
      ...track,
      sessions: [...track.sessions, { date: "2026-02-02", captureSd: 0, swings: [], use: false }],
    }));
    expect(compareDrills(listed, POLICY)).toEqual(found);
  });
});
