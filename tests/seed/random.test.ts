import { describe, expect, it } from "vitest";
import { heavyTailed, normal, oneOf, type Random, randomFrom, whole } from "@/seed/random";

const N = 40_000;

function draws(count: number, draw: (random: Random) => number, seed = 5): number[] {
  const random = randomFrom(seed, 0);
  return Array.from({ length: count }, () => draw(random));
}

const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;

describe("a seeded stream", () => {
  it("says the same again for the same seed and stream, and something else for the next of either", () => {
    const first = (seed: number, stream: number): number[] => {
      const random = randomFrom(seed, stream);
      return [random.uniform(), random.uniform(), random.uniform()];
    };
    expect(first(1, 1)).toEqual(first(1, 1));
    expect(first(1, 1)).not.toEqual(first(2, 1));
    expect(first(1, 1)).not.toEqual(first(1, 2));
  });

  it("fills ten tenths evenly: chi-square of 40,000 draws below 27.88, the 99.9 % point with 9 degrees of freedom", () => {
    const counts = new Array<number>(10).fill(0);
    for (const value of draws(N, (random) => random.uniform())) {
      const tenth = Math.floor(value * 10);
      counts[tenth] = (counts[tenth] as number) + 1;
    }
    const chiSquare = counts.reduce((sum, count) => sum + (count - N / 10) ** 2 / (N / 10), 0);
    expect(chiSquare).toBeLessThan(27.88);
  });

  it("keeps neighbouring streams apart: correlation within 4 / sqrt(40,000) = 0.02", () => {
    const [a, b] = [randomFrom(9, 1), randomFrom(9, 2)];
    const products = Array.from({ length: N }, () => (a.uniform() - 0.5) * (b.uniform() - 0.5) * 12);
    expect(Math.abs(mean(products))).toBeLessThan(0.02);
  });
});

describe("draws from a stream", () => {
  it("normal: mean 0 within 4 se = 0.02, variance 1 within 4 x sqrt(2 / 40,000) = 0.028, 4.55 % beyond 2 within 0.42 %", () => {
    const values = draws(N, normal);
    expect(Math.abs(mean(values))).toBeLessThan(0.02);
    expect(Math.abs(mean(values.map((value) => value * value)) - 1)).toBeLessThan(0.028);
    const beyond = values.filter((value) => Math.abs(value) > 2).length / N;
    expect(Math.abs(beyond - 0.0455)).toBeLessThan(0.0042);
  });

  it("heavy-tailed: sd 1, and beyond 3 in 1.34 % (t4 beyond 3 sqrt 2 = 4.243) within 0.24 %, five times the normal share", () => {
    const values = draws(N, heavyTailed);
    const beyond = values.filter((value) => Math.abs(value) > 3).length / N;
    expect(Math.abs(beyond - 0.0132)).toBeLessThan(0.0024);
  });

  it("whole numbers and list entries reach both ends and nothing beyond", () => {
    const numbers = new Set(draws(500, (random) => whole(random, 3, 5)));
    expect([...numbers].sort()).toEqual([3, 4, 5]);
    const random = randomFrom(1, 1);
    const picked = new Set(Array.from({ length: 200 }, () => oneOf(random, ["a", "b"])));
    expect([...picked].sort()).toEqual(["a", "b"]);
  });
});
