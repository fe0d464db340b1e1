import { expect, it } from "vitest";
import type { TrackHistory } from "@/lib/verdict/session-history";
import { sessionSd } from "@/lib/verdict/session-sd";

const history = { judged: { readerSd: 2 }, fundamental: { readerSd: 9 } } as unknown as TrackHistory;
const film = (swings: number) => ({
  captureSd: 3,
  swings: Array.from({ length: swings }, (_, at) => ({ number: at + 1, value: 0, read: 0 })),
});

it("day 4 and camera 3 whole, swing 3 and reader 4 by their four swings: √(16 + 9 + 25 / 4)", () => {
  const budget = { errorBudget: { day: 4, swing: 3, reader: 4, camera: 1 } };
  expect(sessionSd(history, budget, film(4))).toBeCloseTo(Math.sqrt(31.25), 12);
  // Without a swing it is counted as one.
  expect(sessionSd(history, budget, film(0))).toBe(sessionSd(history, budget, film(1)));
});

it("before day and swing are known: camera 3 and reader 2 by one swing, the catalogue’s sd where none is measured", () => {
  expect(sessionSd(history, { errorBudget: null }, film(1))).toBeCloseTo(Math.sqrt(13), 12);
  const unmeasured = { ...history, judged: {} } as unknown as TrackHistory;
  expect(sessionSd(unmeasured, { errorBudget: null }, film(9))).toBeCloseTo(Math.sqrt(18), 12);
});
