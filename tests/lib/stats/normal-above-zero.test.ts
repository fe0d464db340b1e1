import { describe, expect, it } from "vitest";
import { normalAboveZero } from "@/lib/stats/normal-above-zero";
import { seededNormals } from "./seeded-normals";

describe("reference", () => {
  it("half of a standard normal: mean sqrt(2/pi) = .797885, variance 1 - 2/pi = .363380 (Johnson, Kotz & Balakrishnan 1994)", () => {
    const { probability, mean, variance } = normalAboveZero(0, 1);
    expect(probability).toBeCloseTo(0.5, 12);
    expect(mean).toBeCloseTo(Math.sqrt(2 / Math.PI), 12);
    expect(variance).toBeCloseTo(1 - 2 / Math.PI, 12);
  });
  it("agrees with sums of the density at 40 000 points of 0 to 20, for means of -2, 1 and 3 and an sd of 1.5", () => {
    for (const centre of [-2, 1, 3]) {
      const [step, sums] = [20 / 40_000, [0, 0, 0] as [number, number, number]];
      for (let i = 0; i < 40_000; i++) {
        const x = (i + 0.5) * step;
        const density = Math.exp(-0.5 * ((x - centre) / 1.5) ** 2) / (1.5 * Math.sqrt(2 * Math.PI));
        sums[0] += density * step;
        sums[1] += density * x * step;
        sums[2] += density * x * x * step;
      }
      const mean = sums[1] / sums[0];
      const part = normalAboveZero(centre, 1.5);
      expect(part.probability).toBeCloseTo(sums[0], 6);
      expect(part.mean).toBeCloseTo(mean, 6);
      expect(part.variance).toBeCloseTo(sums[2] / sums[0] - mean * mean, 6);
    }
  });
});

describe("too little and bad input", () => {
  it("far below 0 it stays finite and above 0: at 60 sds the part is exponential with mean sd/60", () => {
    expect(normalAboveZero(-60, 1)).toEqual({ probability: expect.any(Number), mean: 1 / 60, variance: 1 / 3600 });
    expect(normalAboveZero(-24.9, 1).mean).toBeCloseTo(normalAboveZero(-25.1, 1).mean, 3);
  });
  it("an sd of 0 or a mean that is no number throws with it", () => {
    expect(() => normalAboveZero(1, 0)).toThrow("1, 0");
    expect(() => normalAboveZero(Number.NaN, 1)).toThrow("NaN");
  });
});

describe("invariance", () => {
  it("scale: 10 times the mean and sd, 10 times the part's mean, 100 times its variance", () => {
    const [one, ten] = [normalAboveZero(-0.7, 2), normalAboveZero(-7, 20)];
    expect(ten.probability).toBeCloseTo(one.probability, 12);
    expect(ten.mean).toBeCloseTo(10 * one.mean, 10);
    expect(ten.variance).toBeCloseTo(100 * one.variance, 9);
  });
  it("both parts together are the whole: mean and second moment of N(1, 2)", () => {
    const [above, below] = [normalAboveZero(1, 2), normalAboveZero(-1, 2)];
    expect(above.probability * above.mean - below.probability * below.mean).toBeCloseTo(1, 12);
    const square = (part: typeof above) => part.probability * (part.variance + part.mean ** 2);
    expect(square(above) + square(below)).toBeCloseTo(5, 12);
  });
});

describe("calibration", () => {
  it("of 20 000 seeded draws of N(.5, 1) those above 0 have its share, mean and variance within 4 standard errors", () => {
    const draw = seededNormals(7);
    const drawn = Array.from({ length: 20_000 }, () => 0.5 + draw());
    const above = drawn.filter((x) => x > 0);
    const mean = above.reduce((sum, x) => sum + x, 0) / above.length;
    const variance = above.reduce((sum, x) => sum + (x - mean) ** 2, 0) / above.length;
    const part = normalAboveZero(0.5, 1);
    expect(Math.abs(above.length / drawn.length - part.probability)).toBeLessThan(4 * Math.sqrt(0.25 / 20_000));
    expect(Math.abs(mean - part.mean)).toBeLessThan(4 * Math.sqrt(part.variance / above.length));
    expect(Math.abs(variance / part.variance - 1)).toBeLessThan(4 * Math.sqrt(3 / above.length));
  });
});
