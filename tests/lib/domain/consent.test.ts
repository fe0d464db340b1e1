import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { dayFromNumber, dayNumber } from "@/lib/domain/calendar-day";
import { type Consent, consentInForce, consentStanding, giverOf, ownAgeDay } from "@/lib/domain/consent";

const mothers: Consent = {
  kind: "measure",
  givenBy: "mother",
  giverIs: "guardian",
  from: "2026-03-01",
  until: "2026-12-31",
  withdrawnOn: null,
};
const own: Consent = { ...mothers, givenBy: "the student", giverIs: "student" };
const on = (day: string, birthYear: number | null = null) => ({ day, birthYear, ownConsentAge: 16 });

describe("one consent", () => {
  it.each<[string, Consent, string, number | null, string]>([
    ["the day before its first", mothers, "2026-02-28", null, "not-yet"],
    ["its first day", mothers, "2026-03-01", null, "given"],
    ["its last day", mothers, "2026-12-31", null, "given"],
    ["the day after its last", mothers, "2027-01-01", null, "lapsed"],
    ["without an end, far ahead", { ...mothers, until: null }, "2099-01-01", null, "given"],
    ["the day before it was withdrawn", { ...mothers, withdrawnOn: "2026-05-01" }, "2026-04-30", null, "given"],
    ["the day on which it was withdrawn", { ...mothers, withdrawnOn: "2026-05-01" }, "2026-05-01", null, "withdrawn"],
    ["withdrawn before it began", { ...mothers, withdrawnOn: "2026-02-01" }, "2026-02-10", null, "withdrawn"],
    ["withdrawn before it began, later", { ...mothers, withdrawnOn: "2026-02-01" }, "2026-06-10", null, "withdrawn"],
    ["turned about, from after until", { ...mothers, until: "2026-02-01" }, "2026-06-01", null, "lapsed"],
    ["born 2009, 16 in 2025 surely by 2026", { ...mothers, from: "2025-03-01" }, "2025-12-31", 2009, "given"],
    ["born 2009, on 1 January 2026", { ...mothers, from: "2025-03-01" }, "2026-01-01", 2009, "own-age"],
    ["born 2010, all of 2026", mothers, "2026-12-31", 2010, "given"],
    ["the student's own word, whatever the age", own, "2026-06-01", 1980, "given"],
    ["a guardian's for somebody of 46", mothers, "2026-06-01", 1980, "own-age"],
    ["a guardian's where no birth year is known", mothers, "2026-06-01", null, "given"],
    ["lapsed before the own age came", { ...mothers, until: "2026-05-01" }, "2027-06-01", 2010, "lapsed"],
  ])("%s", (_, consent, day, birthYear, kind) => {
    expect(consentStanding([consent], "measure", on(day, birthYear)).kind).toBe(kind);
    expect(consentInForce([consent], "measure", on(day, birthYear))).toBe(kind === "given");
  });
  it("none of its kind is none: a consent to measure shares nothing", () => {
    expect(consentStanding([mothers], "share", on("2026-06-01"))).toEqual({ kind: "none" });
    expect(consentStanding([], "measure", on("2026-06-01"))).toEqual({ kind: "none" });
  });
  it("says until when, and why it ends: 31 Dec by its own end, by the own age even where its end is later", () => {
    const given = { kind: "given", until: "2026-12-31" };
    expect(consentStanding([mothers], "measure", on("2026-06-01"))).toMatchObject({ ...given, ends: "lapsed" });
    const longer = { ...mothers, until: "2028-12-31" };
    expect(consentStanding([longer], "measure", on("2026-06-01", 2010))).toMatchObject({ ...given, ends: "own-age" });
    expect(consentStanding([{ ...own, until: null }], "measure", on("2026-06-01"))).toMatchObject({
      kind: "given",
      until: null,
      ends: null,
    });
  });
  it("a last day that is none throws with it", () =>
    expect(() => consentStanding([{ ...mothers, until: "2026-02-30" }], "measure", on("2026-06-01"))).toThrow(
      "2026-02-30",
    ));
});

describe("several consents", () => {
  const father = { ...mothers, givenBy: "father", from: "2027-01-01", until: "2027-06-30" };
  it("one that follows without a gap carries on: in force until 30 June 2027", () => {
    expect(consentStanding([father, mothers], "measure", on("2026-06-01"))).toMatchObject({ until: "2027-06-30" });
  });
  it("with one day between them it ends before the gap, and the day in it waits for the second", () => {
    const later = { ...father, from: "2027-01-02" };
    expect(consentStanding([mothers, later], "measure", on("2026-06-01"))).toMatchObject({ until: "2026-12-31" });
    expect(consentStanding([mothers, later], "measure", on("2027-01-01"))).toEqual({
      kind: "not-yet",
      from: "2027-01-02",
    });
  });
  it("a withdrawn one doesn't end another's", () => {
    const withdrawn = { ...mothers, withdrawnOn: "2026-05-01" };
    const standing = consentStanding([withdrawn, { ...mothers, givenBy: "father" }], "measure", on("2026-06-01"));
    expect(standing).toMatchObject({ kind: "given", by: [{ givenBy: "father" }] });
  });
  it("what ended last is the reason", () => {
    const early = { ...mothers, until: "2026-04-01" };
    const withdrawn = { ...mothers, withdrawnOn: "2026-05-01" };
    expect(consentStanding([withdrawn, early], "measure", on("2026-06-01"))).toEqual({
      kind: "withdrawn",
      since: "2026-05-01",
    });
  });
});

describe("the own age", () => {
  it("is surely reached on 1 January after the birthday's year: 2010 and 16 make 2027", () => {
    expect(ownAgeDay({ birthYear: 2010, ownConsentAge: 16 })).toBe("2027-01-01");
    expect(ownAgeDay({ birthYear: null, ownConsentAge: 16 })).toBeNull();
  });
  it("decides whose word is asked for", () => {
    expect(giverOf(on("2026-12-31", 2010))).toBe("guardian");
    expect(giverOf(on("2027-01-01", 2010))).toBe("student");
    expect(giverOf(on("2027-01-01"))).toBe("guardian");
  });
});

describe("any consents on any day", () => {
  const base = dayNumber("2026-01-01");
  const day = fc.integer({ min: 0, max: 900 }).map((plus) => dayFromNumber(base + plus));
  const consents = fc.array(
    fc.record({
      kind: fc.constantFrom("measure", "share"),
      givenBy: fc.constant("somebody"),
      giverIs: fc.constantFrom("guardian", "student"),
      from: day,
      until: fc.option(day),
      withdrawnOn: fc.option(day),
    }),
    { maxLength: 5 },
  ) as fc.Arbitrary<Consent[]>;
  const year = fc.option(fc.integer({ min: 2008, max: 2013 }));
  /** By the plain rule, day by day, without stretches. */
  const plainly = (all: readonly Consent[], today: string, birthYear: number | null): boolean =>
    all.some(
      (each) =>
        each.kind === "measure" &&
        each.from <= today &&
        (each.until === null || today <= each.until) &&
        (each.withdrawnOn === null || today < each.withdrawnOn) &&
        (each.giverIs === "student" || birthYear === null || Number(today.slice(0, 4)) <= birthYear + 16),
    );
  it("in force exactly where the plain rule says so, in any order", () => {
    fc.assert(
      fc.property(consents, day, year, (all, today, birthYear) => {
        const is = consentInForce(all, "measure", on(today, birthYear));
        expect(is).toBe(plainly(all, today, birthYear));
        expect(consentInForce(all.toReversed(), "measure", on(today, birthYear))).toBe(is);
      }),
      { numRuns: 2000 },
    );
  });
  it("until is the last day without a gap: in force on each day to it, not on the next", () => {
    fc.assert(
      fc.property(consents, day, year, (all, today, birthYear) => {
        const standing = consentStanding(all, "measure", on(today, birthYear));
        if (standing.kind !== "given") return;
        const last = standing.until ?? dayFromNumber(dayNumber(today) + 1500);
        for (let number = dayNumber(today); number <= dayNumber(last); number += 1)
          expect(plainly(all, dayFromNumber(number), birthYear)).toBe(true);
        if (standing.until !== null)
          expect(plainly(all, dayFromNumber(dayNumber(standing.until) + 1), birthYear)).toBe(false);
      }),
      { numRuns: 500 },
    );
  });
  it("what begins or ended is true: in force on the day it begins, and not from the day since which there is none", () => {
    fc.assert(
      fc.property(consents, day, year, (all, today, birthYear) => {
        const standing = consentStanding(all, "measure", on(today, birthYear));
        if (standing.kind === "not-yet") expect(plainly(all, standing.from, birthYear)).toBe(true);
        if (!("since" in standing)) return;
        expect(standing.since <= today).toBe(true);
        for (let number = dayNumber(standing.since); number <= dayNumber(today); number += 1)
          expect(plainly(all, dayFromNumber(number), birthYear)).toBe(false);
      }),
      { numRuns: 1000 },
    );
  });
});
