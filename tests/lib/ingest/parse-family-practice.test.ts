import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { parseFamilyPractice } from "@/lib/ingest/parse-family-practice";

const DAYS = ["2026-09-12", "2026-09-11"];
const DRILLS = [{ id: "wall", start: "2026-09-12", end: null }];
const onFile = new Map([["2026-09-11", { minutes: 290, balls: 0 }]]);

function read(fields: Readonly<Record<string, string>>) {
  const data = new FormData();
  for (const [name, value] of Object.entries({ day: "2026-09-12", hurts: "no", ...fields })) data.set(name, value);
  return parseFamilyPractice(data, { days: DAYS, drills: DRILLS, onFile }, (day) =>
    day === "2026-09-12" ? "wall" : "",
  );
}

const codes = (fields: Readonly<Record<string, string>>) => {
  const { practised } = read(fields);
  return practised.kind === "issues" ? practised.issues.map(({ field, code }) => `${field} ${code}`) : [];
};

describe("parseFamilyPractice", () => {
  it("takes minutes or balls with the drill in hand on that day", () => {
    expect(read({ minutes: "10", felt: "hard" })).toEqual({
      hurting: null,
      practised: {
        kind: "ok",
        value: { day: "2026-09-12", assignmentId: "wall", minutes: 10, balls: null, felt: "hard" },
      },
    });
    expect(read({ day: "2026-09-11", balls: "40" })).toMatchObject({
      practised: { value: { day: "2026-09-11", assignmentId: null, minutes: null, balls: 40 } },
    });
  });

  it("a yes to pain needs no practice; a place without a yes is passed over", () => {
    const hurting = { day: "2026-09-12", place: "knee" };
    expect(read({ hurts: "yes", place: "knee" })).toEqual({ hurting, practised: { kind: "ok", value: null } });
    expect(read({ hurts: "yes", place: "knee", minutes: "5" })).toMatchObject({
      ...{ hurting, practised: { value: { minutes: 5 } } },
    });
    expect(read({ hurts: "no", place: "knee", minutes: "5" })).toMatchObject({ hurting: null });
    expect(codes({ hurts: "", minutes: "5" })).toEqual(["hurts hurts-missing"]);
  });

  it("a yes to pain is read whatever is wrong with the rest, without a place as elsewhere, without a day as today", () => {
    const [today, yesterday] = DAYS;
    for (const place of ["", "soul"])
      expect(read({ hurts: "yes", place })).toEqual({
        hurting: { day: today, place: "elsewhere" },
        practised: { kind: "ok", value: null },
      });
    for (const [fields, day, wrong] of [
      [{ minutes: "twelve" }, today, ["minutes not-a-count"]],
      [{ day: yesterday ?? "", balls: "1001" }, yesterday, ["balls many-balls"]],
      [{ day: "2026-09-01", minutes: "5" }, today, ["day not-a-choice"]],
      [{ minutes: "5", felt: "odd" }, today, ["felt not-a-choice"]],
    ] as const) {
      const sent = { hurts: "yes", place: "knee", ...fields };
      expect([read(sent).hurting, codes(sent)]).toEqual([{ day, place: "knee" }, wrong]);
    }
  });

  it("a day's sum beyond what is likely is refused: 290 and 11 minutes are more than 300, 10 are not", () => {
    expect(codes({ day: "2026-09-11", minutes: "11" })).toEqual(["minutes much-practice"]);
    expect(codes({ day: "2026-09-11", minutes: "10" })).toEqual([]);
    expect(codes({ day: "2026-09-11", minutes: "11", confirmMuch: "yes" })).toEqual(["minutes much-practice"]);
  });

  it("never throws, and what it takes is a day of the two with whole numbers in range", () => {
    const field = fc.oneof(
      fc.string({ unit: "binary" }),
      fc.constantFrom("yes", "no", "knee", "10", "-1", "1e9", ...DAYS),
    );
    fc.assert(
      fc.property(field, field, field, field, field, field, (day, minutes, balls, felt, hurts, place) => {
        const { hurting, practised } = read({ day, minutes, balls, felt, hurts, place });
        if ((hurting !== null) !== (hurts.normalize("NFC").trim() === "yes")) return false;
        if (hurting !== null && !DAYS.includes(hurting.day)) return false;
        if (practised.kind === "issues") return practised.issues.length > 0;
        const entry = practised.value;
        const counts = [entry?.minutes ?? 1, entry?.balls ?? 1];
        return (
          (entry === null ? hurting !== null : DAYS.includes(entry.day)) &&
          counts.every((count) => Number.isInteger(count) && count > 0 && count <= 1000)
        );
      }),
      { numRuns: 2000, seed: 6 },
    );
  });
});
