import { expect, test } from "vitest";
import type { ReadBackCandidate } from "@/lib/domain/read-back";
import { drawReadBack, isReadable } from "@/lib/verdict/draw-read-back";
import { seededChances } from "../stats/seeded-normals";

const film = (at: number, swings: number, more: Partial<ReadBackCandidate> = {}): ReadBackCandidate[] =>
  Array.from({ length: swings }, (_, swing) => ({
    ...{ sessionId: `f${at}`, day: `2031-01-${10 + at}`, reader: "Coach", swingId: at * 10 + swing, swing: swing + 1 },
    ...{ filmed: "yes", filmReference: `shelf ${at}`, waits: "no" },
    ...more,
  }));

test("all swings of the chosen films, or so many of each, none twice and none of another film", () => {
  const candidates = [...film(1, 4), ...film(2, 2), ...film(3, 5)];
  const wish = { sessionIds: ["f1", "f2"], each: null };
  expect(drawReadBack(candidates, wish, seededChances(1))).toHaveLength(6);
  const three = drawReadBack(candidates, { ...wish, each: 3 }, seededChances(2));
  expect(three.map(({ sessionId }) => sessionId).sort()).toEqual(["f1", "f1", "f1", "f2", "f2"]);
  expect(new Set(three.map(({ swingId }) => swingId)).size).toBe(5);
});

test("what can't be opened, wasn't filmed from that side or waits already is passed over", () => {
  const out = [
    ...film(1, 2, { filmReference: null }),
    ...film(2, 2, { filmReference: "  " }),
    ...film(3, 2, { filmed: "no" }),
    ...film(4, 2, { waits: "yes" }),
  ];
  expect(out.filter(isReadable)).toEqual([]);
  const wish = { sessionIds: ["f1", "f2", "f3", "f4", "f9"], each: null };
  expect(drawReadBack(out, wish, seededChances(3))).toEqual([]);
});

test("the order tells nothing of the days: over 3,000 draws the rank correlation of place and day is 0 within 3 standard errors", () => {
  const candidates = [0, 1, 2, 3, 4, 5].flatMap((at) => film(at, 1));
  const chance = seededChances(4);
  const wish = { sessionIds: candidates.map(({ sessionId }) => sessionId), each: null };
  let sum = 0;
  const draws = 3000;
  for (let i = 0; i < draws; i++) {
    const days = drawReadBack(candidates, wish, chance).map(({ swingId }) => swingId / 10);
    // Spearman of six: 1 - 6 sum d² / (n (n² - 1)).
    sum += 1 - (6 * days.reduce((total, day, place) => total + (day - place) ** 2, 0)) / (6 * 35);
  }
  // Its variance under chance is 1 / (n - 1).
  expect(Math.abs(sum / draws)).toBeLessThan(3 * Math.sqrt(1 / 5 / draws));
});
