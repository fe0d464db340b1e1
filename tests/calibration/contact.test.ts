import { describe, expect, it } from "vitest";
import { scoreContact } from "./contact-score";

/** A count that a binomial of n and p exceeds in one of a hundred, by the normal curve. */
function highest(n: number, p: number): number {
  return Math.floor(n * p + 2.33 * Math.sqrt(n * p * (1 - p)) + 0.5);
}

/** A count below which a binomial of n and p falls in one of a hundred. */
function lowest(n: number, p: number): number {
  return Math.ceil(n * p - 2.33 * Math.sqrt(n * p * (1 - p)) - 0.5);
}

describe("contact, short form", () => {
  const FLAT = 24;
  const STEPS = 8;

  it(`of ${FLAT} unchanged seasons with correlation .1 at most ${highest(FLAT, 0.05)} are ever called changed: 5 % and its Monte-Carlo band; the share now lies in its 95 of 100 in at least ${lowest(FLAT, 0.95)}`, () => {
    const flat = scoreContact({ before: 0.4, after: 0.4, correlation: 0.1 }, FLAT, 4301);
    expect(flat.falseWord).toBeLessThanOrEqual(highest(FLAT, 0.05));
    expect(flat.in95).toBeGreaterThanOrEqual(lowest(FLAT, 0.95));
  }, 60_000);

  it(`a change from .4 to .7, days independent, is found in at least ${lowest(STEPS, 0.95)} of ${STEPS}: 95 % less the band`, () => {
    const step = scoreContact({ before: 0.4, after: 0.7, correlation: 0 }, STEPS, 4302);
    expect(step.found).toBeGreaterThanOrEqual(lowest(STEPS, 0.95));
    expect(step.takenBack).toBeLessThanOrEqual(highest(STEPS, 0.05));
  }, 60_000);
});
