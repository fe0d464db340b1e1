import { describe, expect, it } from "vitest";
import { golferFigure, HANDS, STICKS } from "@/lib/report/golfer-figure";

describe("the golfer that is drawn", () => {
  it("stands as a right-hander: feet behind the hands, hands behind the ball, and lower trail than lead shoulder", () => {
    const above = golferFigure("above", ({ along, out }) => ({ x: along, y: out }), 1);
    const feet = above.lines.filter((line) => line.role === "foot").flatMap((line) => line.points);
    for (const point of feet) expect(point.y).toBeLessThan(HANDS.out);
    expect(above.rounds.find((round) => round.role === "ball")?.at).toEqual({ x: 0, y: 0 });
    const front = golferFigure("upright", ({ along, up }) => ({ x: along, y: up }), 1);
    const shoulders = front.lines[4]?.points ?? [];
    expect(shoulders[0]?.x).toBeLessThan(shoulders[1]?.x ?? 0);
    expect(shoulders[0]?.y).toBeLessThan(shoulders[1]?.y ?? 0);
  });

  it("holds a club that fits it: 0.5 m out and 0.75 m down to the ball is 0.9 m", () => {
    expect(Math.hypot(HANDS.out, HANDS.up - 0.03)).toBeCloseTo(0.9, 2);
  });

  it("the sticks make a T past the ball, 1.2 m each, and none lies at the toes", () => {
    for (const [from, to] of Object.values(STICKS)) {
      expect(Math.hypot(to.along - from.along, to.out - from.out)).toBeCloseTo(1.2, 12);
      expect(Math.min(from.out, to.out)).toBeGreaterThan(0.1);
    }
    expect(STICKS.aim[0].out).toBe(STICKS.aim[1].out);
    expect(STICKS.leg.map((spot) => spot.along)).toEqual([0, 0]);
  });
});
