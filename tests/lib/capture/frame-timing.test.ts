import { describe, expect, it } from "vitest";
import { blurDegrees, timingSd } from "@/lib/capture/frame-timing";

describe("reference: worked values (an even distribution over half a picture either way)", () => {
  it.each([
    [30, 9.6],
    [60, 4.8],
    [120, 2.4],
    [240, 1.2],
  ])("at %d pictures a second the moment is known to %d ms", (frames, milliseconds) => {
    expect(Math.abs(1000 * timingSd(1, frames) - milliseconds)).toBeLessThan(0.0501);
  });

  it.each([
    [180, [1.7, 0.9, 0.4, 0.2]],
    [150, [1.4, 0.7, 0.4, 0.2]],
    [1800, [17, 8.7, 4.3, 2.2]],
  ])("%d degrees a second: %j degrees at 30, 60, 120, 240", (speed, sds) => {
    [30, 60, 120, 240].forEach((frames, i) => {
      const wanted = sds[i] as number;
      expect(Math.abs(timingSd(speed, frames) - wanted)).toBeLessThan(wanted > 10 ? 0.51 : 0.0501);
    });
  });

  it("a shaft at 1800 degrees a second smears over 30, 7.5, 1.8, .45 degrees at 1/60, 1/240, 1/1000, 1/4000", () => {
    for (const [shutter, smear] of [
      [60, 30],
      [240, 7.5],
      [1000, 1.8],
      [4000, 0.45],
    ] as const)
      expect(blurDegrees(1800, shutter)).toBeCloseTo(smear, 6);
  });
});

describe("bad input", () => {
  it("no pictures and no shutter are refused", () => {
    expect(() => timingSd(180, 0)).toThrow(/0/);
    expect(() => blurDegrees(180, 0)).toThrow(/0/);
  });
});
