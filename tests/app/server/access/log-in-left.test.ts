import { expect, it } from "vitest";
import { secondsLeft } from "@/app/_server/access/log-in-left";

it("a log-in's time is told in whole seconds from now, and never below none", () => {
  const now = Date.now();
  const left = secondsLeft({ unused: now + 600_500, latest: now + 86_400_500 });
  expect(left.unused).toBeGreaterThanOrEqual(599);
  expect(left.unused).toBeLessThanOrEqual(600);
  expect(left.latest - left.unused).toBe(86_400 - 600);
  expect(secondsLeft({ unused: now - 1, latest: now - 5000 })).toEqual({ unused: 0, latest: 0 });
});
