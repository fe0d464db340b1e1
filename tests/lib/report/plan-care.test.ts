import { expect, test } from "vitest";
import { BUILT_IN } from "@/lib/domain/catalogue";
import { planCare } from "@/lib/report/plan-care";
import type { PlannedFundamental } from "@/lib/verdict/plan-session";

/** A fundamental whose films have those camera sds, which a checked camera would bring to `checked`. */
function item(id: string, sds: readonly number[], change: object = {}, checked = 1): PlannedFundamental {
  return {
    fundamental: BUILT_IN.find((each) => each.id === id),
    track: {
      history: {
        sessions: sds.map((captureSd) => ({ captureSd, apart: null })),
        judged: { checkedCaptureSd: checked },
      },
    },
    tells: { kind: "guards" },
    ...change,
  } as unknown as PlannedFundamental;
}
const said = (...items: readonly PlannedFundamental[]) =>
  planCare(items).map(({ care, fundamentals }) => `${care}: ${fundamentals.map(({ id }) => id).join(" ")}`);

test("only what moves a fundamental, and only where the phone would be better known by it", () => {
  expect(said(item("setup-tilt", [3, 3, 3]))).toEqual(["yaw: setup-tilt", "roll: setup-tilt"]);
  expect(said(item("foot-line", [3, 3, 3]))).toEqual(["offset: foot-line"]);
  expect(said(item("setup-tilt", [1, 1, 3]))).toEqual([]);
  expect(said(item("setup-tilt", [3, 3, 3]), item("hinge", [3]), item("foot-line", [0.5]))).toEqual([
    "yaw: setup-tilt hinge",
    "roll: setup-tilt",
  ]);
});

test("a plan that would settle it says how good the phone has to be; of what was never filmed all that moves it is asked", () => {
  const plan = (captureSd: number) => ({ tells: { kind: "plan", plan: { captureSd } } });
  expect(said(item("setup-tilt", [3], plan(3)))).toEqual([]);
  expect(said(item("setup-tilt", [3], plan(1.5)))).toEqual(["yaw: setup-tilt", "roll: setup-tilt"]);
  expect(said(item("foot-line", [], { track: null }))).toEqual(["offset: foot-line"]);
});
