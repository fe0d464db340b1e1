import { expect, it } from "vitest";
import { reversePivot } from "@/lib/verdict/reverse-pivot";
import { levelOf, MADE, madeWork } from "./made-work";

/** Sway in % of stance width, tilt kept in degrees, each with half of its 95 of 100. */
function shown(sway: readonly [number, number] | null, tilt: readonly [number, number] | null): string {
  const levels: Record<string, readonly [number, number] | null> = { "hip-sway": sway, "tilt-kept": tilt };
  return reversePivot(
    madeWork({}).map((item) => {
      const level = levels[item.fundamental.id];
      if (level === undefined) return item;
      return { ...item, verdict: level === null ? null : { ...MADE.outside, levelNow: levelOf(...level) } };
    }),
  );
}

it("is shown where sway lies above +10 % and tilt kept below -5 degrees with all their doubt: 12 - 1.9, -7 + 1.9", () => {
  expect(shown([12, 1.9], [-7, 1.9])).toBe("shown");
});

it("is not shown where one of the two may as well not be: 12 - 2 is 10, -7 + 2 is -5", () => {
  expect(shown([12, 2], [-7, 1.9])).toBe("not-shown");
  expect(shown([12, 1.9], [-7, 2])).toBe("not-shown");
});

it("is not shown by one of the two alone, nor by what wasn't measured", () => {
  expect(shown([14, 1], [1, 1])).toBe("not-shown");
  expect(shown([2, 1], [-9, 1])).toBe("not-shown");
  expect(shown(null, [-9, 1])).toBe("not-shown");
  expect(shown([14, 1], null)).toBe("not-shown");
});
