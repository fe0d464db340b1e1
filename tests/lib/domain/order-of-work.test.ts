import { expect, it } from "vitest";
import { BUILT_IN } from "@/lib/domain/catalogue";
import { isNamedInOrder, NAMED_IN_ORDER, REVERSE_PIVOT_PARTS } from "@/lib/domain/order-of-work";

it("names ten fundamentals of the catalogue, in the catalogue's own order", () => {
  const named = BUILT_IN.filter(isNamedInOrder);
  expect(named.map(({ id }) => id)).toEqual([...NAMED_IN_ORDER]);
  expect(named.map(({ phase }) => phase).filter((phase) => phase === "impact")).toEqual([]);
});

it("names nothing of an academy's own", () => {
  expect(isNamedInOrder({ id: "own-lead-heel" })).toBe(false);
});

it("has the parts of the pattern in the catalogue, with the units of their limits", () => {
  const unitOf = (id: string) => BUILT_IN.find((each) => each.id === id)?.unit;
  expect([unitOf(REVERSE_PIVOT_PARTS.sway), unitOf(REVERSE_PIVOT_PARTS.tilt)]).toEqual(["pct-stance", "deg"]);
});
