import { expect, test } from "vitest";
import { filmPlanText, parseFilmPlanBody, plannedSwings } from "@/lib/domain/film-plan";

const body = {
  fundamentals: [
    { id: "hinge", swings: 5 },
    { id: "foot-line", swings: 3 },
  ],
  views: ["face-on", "down-the-line"],
  care: ["yaw"],
} as const;
const changed = (change: object) => parseFilmPlanBody(JSON.stringify({ ...body, ...change }));

test("a body is kept as text and read back; the film has the most swings of any: 5 of 5 and 3", () => {
  const read = parseFilmPlanBody(
    filmPlanText({ ...body, fundamentals: [...body.fundamentals], views: [...body.views], care: [...body.care] }),
  );
  expect(read).toEqual(body);
  expect(read && plannedSwings(read)).toBe(5);
});

test("what is no plan reads as none: no JSON, nothing in it, no fundamental, 0 or 21 swings, half a swing, another view, another field", () => {
  expect(parseFilmPlanBody("{")).toBeNull();
  expect(parseFilmPlanBody("{}")).toBeNull();
  expect(parseFilmPlanBody("null")).toBeNull();
  for (const swings of [0, 21, 2.5, "5"]) expect(changed({ fundamentals: [{ id: "hinge", swings }] })).toBeNull();
  for (const change of [{ fundamentals: [] }, { views: [] }, { views: ["above"] }, { care: ["luck"] }, { more: 1 }])
    expect(changed(change)).toBeNull();
  expect(changed({ fundamentals: Array.from({ length: 9 }, (_, i) => ({ id: `own-${i}`, swings: 1 })) })).toBeNull();
  expect(() => filmPlanText({ fundamentals: [], views: ["face-on"], care: [] })).toThrow();
});
