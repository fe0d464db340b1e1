import { expect, test } from "vitest";
import type { Position } from "@/lib/domain/track-verdict";
import { countPlaces } from "@/lib/report/count-places";
import { wordsFor } from "@/lib/words/catalogue";

test("two inside, one outside; one without a goal counts nowhere", () => {
  const places: readonly (Position | null)[] = ["inside", "outside", null, "inside"];
  expect(countPlaces(places.map((position) => ({ verdict: { position } })))).toEqual({
    inside: 2,
    outside: 1,
    edge: 0,
  });
  expect(countPlaces([])).toEqual({ inside: 0, outside: 0, edge: 0 });
});

test.each([
  [{ outside: 2, edge: 1, inside: 5 }, "2 outside, 1 on the edge, 5 inside"],
  [{ outside: 2, edge: 0, inside: 5 }, "2 outside, 5 inside"],
  [{ outside: 2, edge: 1, inside: 0 }, "2 outside, 1 on the edge"],
  [{ outside: 0, edge: 1, inside: 5 }, "1 on the edge, 5 inside"],
  [{ outside: 0, edge: 0, inside: 5 }, "5 inside"],
  [{ outside: 3, edge: 0, inside: 0 }, "3 outside"],
])("%j is said as %s", (counts, said) => expect(wordsFor("en").say("roster.places", counts)).toBe(said));
