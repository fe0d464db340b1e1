import { describe, expect, it } from "vitest";
import { BUILT_IN } from "@/lib/domain/catalogue";
import { asDecided, type GoalBand, goalInForce, goalsBetween } from "@/lib/domain/goal-band";

const hinge = BUILT_IN.find((entry) => entry.id === "hinge") ?? BUILT_IN[0];
const ari = { id: "a", birthYear: 2014 };
const band = (change: Partial<GoalBand>): GoalBand => ({
  fundamentalId: "hinge",
  clubGroup: "iron",
  scope: "academy",
  ageFrom: null,
  ageTo: null,
  studentId: null,
  from: "2026-01-01",
  reason: "r",
  low: 80,
  high: 100,
  ...change,
});
const inForce = (
  bands: readonly GoalBand[],
  day = "2026-06-01",
  student: { id: string; birthYear: number | null } = ari,
) => {
  if (!hinge) throw new Error("no hinge");
  const { low, high, scope } = goalInForce(bands, hinge, "iron", student, day);
  return [low, high, scope];
};

describe("the goal band in force on a day", () => {
  it("is the built-in one while nobody set another", () => expect(inForce([])).toEqual([85, 95, "built-in"]));
  it("begins on its first day and not before", () => {
    expect(inForce([band({})], "2025-12-31")).toEqual([85, 95, "built-in"]);
    expect(inForce([band({})], "2026-01-01")).toEqual([80, 100, "academy"]);
  });
  it("the narrowest scope wins, however old: student before age range before academy", () => {
    const age = band({ scope: "age-range", ageFrom: 10, ageTo: 12, low: 75, from: "2026-02-01" });
    const own = band({ scope: "student", studentId: "a", low: 70, from: "2026-01-15" });
    expect(inForce([own, age, band({ from: "2026-05-01" })])).toEqual([70, 100, "student"]);
    expect(inForce([age, band({ from: "2026-05-01" })])).toEqual([75, 100, "age-range"]);
  });
  it("within a scope the latest wins", () =>
    expect(inForce([band({ low: 81, from: "2026-03-01" }), band({ low: 82 })])).toEqual([81, 100, "academy"]));
  it("age is counted in whole years to the end of the year: born 2014 is 12 in 2026", () => {
    const age = band({ scope: "age-range", ageFrom: 12, ageTo: 12 });
    expect(inForce([age])[2]).toBe("age-range");
    expect(inForce([age], "2027-01-01")[2]).toBe("built-in");
    expect(inForce([age], "2026-06-01", { id: "b", birthYear: null })[2]).toBe("built-in");
  });
  it("another student's, another club's and another fundamental's band are passed over", () =>
    expect(
      inForce([
        band({ scope: "student", studentId: "b" }),
        band({ clubGroup: "driver" }),
        band({ fundamentalId: "hip-sway" }),
      ]),
    ).toEqual([85, 95, "built-in"]));
});

describe("a band that gives the word back", () => {
  const own = (change: Partial<GoalBand>) => band({ scope: "student", studentId: "a", ...change });
  const back = { low: null, high: null } as const;
  it("leaves it to the wider scope from its day on, and that one is followed when it changes", () => {
    const bands = [band({}), own({ low: 70, from: "2026-02-01" }), own({ ...back, from: "2026-04-01" })];
    expect(inForce(bands, "2026-03-31")).toEqual([70, 100, "student"]);
    expect(inForce(bands, "2026-04-01")).toEqual([80, 100, "academy"]);
    expect(inForce([...bands, band({ low: 82, from: "2026-05-01" })])).toEqual([82, 100, "academy"]);
  });
  it("an academy’s leads back to the built-in one; an age range’s ends its own range alone", () => {
    expect(inForce([band({}), band({ ...back, from: "2026-04-01" })])).toEqual([85, 95, "built-in"]);
    const range = (ageFrom: number, change: Partial<GoalBand>) =>
      band({ scope: "age-range", ageFrom, ageTo: 18, ...change });
    const bands = [range(9, { low: 71 }), range(10, { low: 72, from: "2026-02-01" })];
    expect(inForce(bands)).toEqual([72, 100, "age-range"]);
    expect(inForce([...bands, range(10, { ...back, from: "2026-03-01" })])).toEqual([71, 100, "age-range"]);
  });
  it("a newer one holds again", () =>
    expect(inForce([own({ ...back }), own({ low: 75, from: "2026-03-01" })])).toEqual([75, 100, "student"]));
});

describe("a band that was dated back", () => {
  it("decides from the day on which it was entered", () => {
    const late = band({ from: "2026-02-01", decidesFrom: "2026-05-01" });
    expect(inForce(asDecided([late]), "2026-04-30")).toEqual([85, 95, "built-in"]);
    expect(inForce(asDecided([late]), "2026-05-01")).toEqual([80, 100, "academy"]);
    expect(inForce([late], "2026-02-01")).toEqual([80, 100, "academy"]);
  });
});

describe("the goals of a stretch of days", () => {
  const over = (bands: readonly GoalBand[], stretch: readonly [string, string]) => {
    if (!hinge) throw new Error("no hinge");
    return goalsBetween(bands, hinge, "iron", ari, stretch).map((goal) => [goal.from, goal.low, goal.high]);
  };
  it("one that never changed stands once, from the first day", () =>
    expect(over([], ["2026-03-01", "9999-12-31"])).toEqual([["2026-03-01", 85, 95]]));
  it("a new one begins on its day; one of a later day or the same edges adds nothing", () => {
    const bands = [band({ from: "2026-05-01" }), band({ from: "2026-06-01" }), band({ from: "2026-12-01", low: 1 })];
    expect(over(bands, ["2026-03-01", "2026-09-12"])).toEqual([
      ["2026-03-01", 85, 95],
      ["2026-05-01", 80, 100],
    ]);
  });
  it("a band for an age begins with the year in which the age is reached", () =>
    expect(
      over([band({ scope: "age-range", ageFrom: 12, ageTo: 12, from: "2025-01-01" })], ["2025-06-01", "2026-09-12"]),
    ).toEqual([
      ["2025-06-01", 85, 95],
      ["2026-01-01", 80, 100],
    ]));
});
