import { afterAll, expect } from "vitest";

/** Counts the cases of one row of the table of trust, and fails when fewer ran than it asks for. */
export function countCases(name: string, least: number): { add(count?: number): void } {
  let ran = 0;
  afterAll(() => {
    console.log(`${name}: ${ran} cases (at least ${least})`);
    expect(ran).toBeGreaterThanOrEqual(least);
  });
  return {
    add(count = 1) {
      ran += count;
    },
  };
}
