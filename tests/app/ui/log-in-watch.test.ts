import { expect, it } from "vitest";
import { ASK_AGAIN_MS, isTimeToAsk, type LogInWatch, WARN } from "@/app/_ui/frame/log-in-watch";

const NOW = Date.UTC(2031, 2, 1);
/** Ten minutes before the end, which was said just now. */
const NEAR: LogInWatch = { end: NOW + 600_000, told: "near", askedAt: NOW };

it("nothing is asked while more is left than is warned of, and at once when it isn't any more", () => {
  const watch: LogInWatch = { end: NOW + WARN * 1000 + 1, told: "nothing", askedAt: 0 };
  expect(isTimeToAsk(watch, NOW, "clock")).toBe(false);
  expect(isTimeToAsk(watch, NOW, "returned")).toBe(false);
  expect(isTimeToAsk(watch, NOW + 1, "clock")).toBe(true);
});

it("once the end was said it is asked again a minute later, at the end, and when somebody comes back", () => {
  expect(isTimeToAsk(NEAR, NOW + ASK_AGAIN_MS - 1, "clock")).toBe(false);
  expect(isTimeToAsk(NEAR, NOW + ASK_AGAIN_MS, "clock")).toBe(true);
  expect(isTimeToAsk(NEAR, NOW + 1, "returned")).toBe(true);
  expect(isTimeToAsk({ ...NEAR, end: NOW + 10 }, NOW + 10, "clock")).toBe(true);
});

it("once it is over it is asked only when somebody comes back", () => {
  const over: LogInWatch = { end: 0, told: "over", askedAt: NOW };
  expect(isTimeToAsk(over, NOW + 3_600_000, "clock")).toBe(false);
  expect(isTimeToAsk(over, NOW + 1, "returned")).toBe(true);
});
