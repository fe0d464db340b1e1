import { expect, test } from "vitest";
import { parsePlanForm } from "@/lib/ingest/parse-plan-form";

const offered = ["trail-v", "hinge", ...Array.from({ length: 9 }, (_, i) => `own-${i}`)];

function parsed(fields: readonly (readonly [string, string])[]) {
  const data = new FormData();
  for (const [name, value] of fields) data.append(name, value);
  const outcome = parsePlanForm(data, { today: "2031-01-05", offered });
  return outcome.kind === "ok" ? outcome.value : outcome.issues.map(({ field, code }) => `${field} ${code}`);
}
const whole = (change: Readonly<Record<string, string>> = {}, ids: readonly string[] = ["hinge"]) =>
  parsed([
    ...ids.map((id) => ["fundamentals", id] as const),
    ...Object.entries({ swings: "5", dueOn: "2031-01-12", ...change }),
  ]);

test("what is ticked comes in the order of work, with its swings and the day", () =>
  expect(whole({}, ["hinge", "trail-v", "hinge"])).toEqual({
    fundamentals: ["trail-v", "hinge"],
    swings: 5,
    dueOn: "2031-01-12",
  }));

test("today is a day to promise; yesterday, a day that isn't, and one beyond a year aren't", () => {
  expect(whole({ dueOn: "2031-01-05" })).toMatchObject({ dueOn: "2031-01-05" });
  expect(whole({ dueOn: "2031-01-04" })).toEqual(["dueOn plan-past"]);
  for (const dueOn of ["", "2031-02-30", "tomorrow"]) expect(whole({ dueOn })).toEqual(["dueOn not-a-date"]);
  expect(whole({ dueOn: "2032-01-06" })).toMatchObject({ dueOn: "2032-01-06" });
  expect(whole({ dueOn: "2032-01-07" })).toEqual(["dueOn plan-far"]);
});

test("swings are 1 to 20, whole; of fundamentals one at least, eight at most, and none that isn't offered", () => {
  for (const swings of ["", "0", "21", "2.5", "-1", "five"]) expect(whole({ swings })).toEqual(["swings not-a-count"]);
  expect(whole({}, [])).toEqual(["fundamentals plan-none"]);
  expect(whole({}, offered.slice(0, 9))).toEqual(["fundamentals plan-many"]);
  expect(whole({}, ["hinge", "<script>"])).toEqual(["fundamentals not-a-choice"]);
});
