import { expect, test } from "vitest";
import { randomOrder } from "@/lib/verdict/random-order";
import { monteCarloBand, seededChances } from "../stats/seeded-normals";

test("the list stays as it was, and its members come back each once", () => {
  const list = Object.freeze([1, 2, 3, 4, 5]) as readonly number[];
  const mixed = randomOrder(list, seededChances(15));
  expect([...mixed].sort()).toEqual([...list]);
  expect(randomOrder([], seededChances(15))).toEqual([]);
});

test("each of the 6 orders of three comes a sixth of 12,000 times", () => {
  const chance = seededChances(16);
  const counts = new Map<string, number>();
  for (let i = 0; i < 12_000; i++) {
    const order = randomOrder(["a", "b", "c"], chance).join("");
    counts.set(order, (counts.get(order) ?? 0) + 1);
  }
  const band = monteCarloBand(1 / 6, 12_000);
  expect(counts.size).toBe(6);
  for (const count of counts.values()) expect(Math.abs(count / 12_000 - 1 / 6)).toBeLessThan(band);
});
