import { describe, expect, it } from "vitest";
import { parseFairForm } from "@/lib/ingest/parse-fair-form";

const library = [
  { id: "gate", fundamentalId: "hinge" },
  { id: "freeze", fundamentalId: "hinge" },
  { id: "rails", fundamentalId: "foot-line" },
];
const good = { first: "gate", second: "freeze", least: "2,5", spread: "4", looks: "2", days: "42" };
const read = (change: Readonly<Record<string, string>> = {}, spread: number | null = 5) => {
  const data = new FormData();
  for (const [name, value] of Object.entries({ ...good, ...change })) data.set(name, value);
  return parseFairForm(data, { library, spreadOf: () => spread });
};
const issues = (change: Readonly<Record<string, string>>, spread: number | null = 5) => {
  const made = read(change, spread);
  return made.kind === "issues" ? made.issues.map(({ field, code }) => `${field} ${code}`) : [];
};

describe("a form that plans a test by the lot", () => {
  it("reads both drills, a size with a comma, and the spread as typed or as the films have it", () => {
    const plan = { fundamentalId: "hinge", firstDrillId: "gate", secondDrillId: "freeze" };
    expect(read()).toEqual({ kind: "ok", value: { ...plan, least: 2.5, spread: 4, looks: 2, days: 42 } });
    expect(read({ spread: "" })).toMatchObject({ kind: "ok", value: { spread: 5 } });
  });
  it("asks for what is missing, and for a spread where no films give one", () => {
    expect(issues({ first: "", second: "", least: "", looks: "", days: "" })).toEqual([
      "first missing",
      "second missing",
      "least missing",
      "looks missing",
      "days missing",
    ]);
    expect(issues({ spread: "" }, null)).toEqual(["spread fair-no-spread"]);
  });
  it("refuses one drill twice, drills for different things, sizes that are none, and days out of bounds", () => {
    expect(issues({ second: "gate" })).toEqual(["second fair-same-drill"]);
    expect(issues({ second: "rails" })).toEqual(["second fair-not-alike"]);
    for (const least of ["0", "-2", "a", "1e3", "1234.5"]) expect(issues({ least })).toEqual(["least fair-not-a-size"]);
    expect(issues({ looks: "0" })).toEqual(["looks not-a-choice"]);
    expect(issues({ looks: "5" })).toEqual(["looks not-a-count"]);
    expect(issues({ days: "6" })).toEqual(["days not-a-count"]);
    expect(issues({ days: "183" })).toEqual(["days not-a-count"]);
  });
});
