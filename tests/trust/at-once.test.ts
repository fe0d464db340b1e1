import { afterEach, beforeEach, expect, it, vi } from "vitest";
import { askUntilHeard, atOnce } from "./at-once";

beforeEach(() => void vi.useFakeTimers());
afterEach(() => void vi.useRealTimers());

/** Answers one after another; the last again and again. */
async function heardOf(...answers: readonly (readonly [number, string?])[]) {
  const from = Date.now();
  let asked = 0;
  const heard = askUntilHeard(async () => {
    const [status, after] = answers[Math.min(asked++, answers.length - 1)] ?? [0];
    return { status, headers: { "retry-after": after } };
  });
  await vi.runAllTimersAsync();
  return { status: (await heard).status, asked, seconds: (Date.now() - from) / 1000 };
}

it("whoever is told to come back soon comes back then, and hears what is said after", async () => {
  expect(await heardOf([429, "1"], [429, "5"], [404])).toEqual({ status: 404, asked: 3, seconds: 6 });
  expect(await heardOf([200])).toEqual({ status: 200, asked: 1, seconds: 0 });
});

it("whoever is slowed for long, or again and again, has that as the answer", async () => {
  expect(await heardOf([429, "60"])).toEqual({ status: 429, asked: 1, seconds: 0 });
  expect(await heardOf([429, "1"])).toEqual({ status: 429, asked: 21, seconds: 20 });
});

it("answers come in the order of the list, a few asked for at a time", async () => {
  let [now, most] = [0, 0];
  const work = atOnce([30, 10, 20, 5, 1, 40], async (ms) => {
    most = Math.max(most, ++now);
    await new Promise((resolve) => setTimeout(resolve, ms));
    now -= 1;
    return ms;
  });
  await vi.runAllTimersAsync();
  expect(await work).toEqual([30, 10, 20, 5, 1, 40]);
  expect(most).toBe(4);
});
