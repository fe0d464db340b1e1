import { describe, expect, it } from "vitest";
import type { RereadCandidate } from "@/lib/domain/reread";
import { type DrawWish, drawRereads } from "@/lib/verdict/draw-rereads";
import { monteCarloBand, seededChances } from "../stats/seeded-normals";

const WISH: DrawWish = { count: 20, readBefore: "2031-03-01T10:00:00.000Z", pairs: new Map() };

/** Candidates of a fundamental: students x sessions x swings, entered long ago. */
function candidates(
  fundamentalId: RereadCandidate["fundamentalId"],
  [students, sessions, swings]: readonly [number, number, number],
  more: Partial<RereadCandidate> = {},
): RereadCandidate[] {
  return Array.from({ length: students * sessions * swings }, (_, i) => {
    const student = Math.floor(i / (sessions * swings));
    const session = Math.floor(i / swings) % sessions;
    return {
      fundamentalId,
      studentId: `s${student}`,
      sessionId: `s${student}-${session}`,
      swingId: i,
      readAt: "2031-02-01T10:00:00.000Z",
      filmReference: `film ${student}-${session}`,
      again: "no",
      ...more,
    };
  });
}
const countBy = (names: readonly string[]): number[] =>
  [...new Set(names)].map((name) => names.filter((each) => each === name).length);

describe("a draw", () => {
  it("20 of 8 students of 5 sessions: 2 or 3 a student, none of them twice in one session", () => {
    const { items } = drawRereads(candidates("hinge", [8, 5, 4]), WISH, seededChances(1));
    expect(items).toHaveLength(20);
    expect(new Set(items.map((item) => item.swingId)).size).toBe(20);
    expect(new Set(countBy(items.map((item) => item.studentId)))).toEqual(new Set([2, 3]));
    expect(Math.max(...countBy(items.map((item) => item.sessionId)))).toBe(1);
  });
  it("takes the two fundamentals with the fewest pairs for 20, and evens them out: 4 and 0 pairs get 8 and 12", () => {
    const all = (["hinge", "foot-line", "setup-tilt"] as const).flatMap((id) => candidates(id, [6, 4, 3]));
    const pairs = new Map([
      ["hinge", 4],
      ["foot-line", 30],
    ]);
    const { items } = drawRereads(all, { ...WISH, pairs }, seededChances(2));
    const drawn = (id: string) => items.filter((item) => item.fundamentalId === id).length;
    expect([drawn("hinge"), drawn("foot-line"), drawn("setup-tilt")]).toEqual([8, 0, 12]);
  });
  it("leaves out what was entered within a day, has no reference or was read again, and counts each: 12, 8, 4 of 30", () => {
    const mixed = [
      ...candidates("hinge", [2, 3, 1]),
      ...candidates("hinge", [2, 3, 2], { filmReference: null, readAt: "2031-03-01T11:00:00.000Z" }),
      ...candidates("hinge", [2, 2, 2], { readAt: "2031-03-01T10:00:00.001Z" }),
      ...candidates("hinge", [2, 2, 1], { again: "yes" }),
    ];
    const got = drawRereads(mixed, WISH, seededChances(3));
    expect([got.noReference, got.tooFresh, got.again, got.eligible]).toEqual([12, 8, 4, 6]);
    expect(got.items).toHaveLength(6);
  });
  it("nothing to draw from gives nothing; one seed gives one draw, another another order", () => {
    expect(drawRereads([], WISH, seededChances(4)).items).toEqual([]);
    const all = candidates("hinge", [8, 5, 4]);
    const places = (seed: number) => drawRereads(all, WISH, seededChances(seed)).items.map((item) => item.swingId);
    expect(places(5)).toEqual(places(5));
    expect(places(5)).not.toEqual(places(6));
  });
  it("2000 draws of one of 40 swings: each swing comes as often as any, 1 in 40 within its Monte-Carlo band", () => {
    const all = candidates("hinge", [5, 4, 2]);
    const chance = seededChances(7);
    const counts = new Map<number, number>();
    for (let run = 0; run < 2000; run++) {
      const [item] = drawRereads(all, { ...WISH, count: 1 }, chance).items;
      counts.set(item?.swingId ?? -1, (counts.get(item?.swingId ?? -1) ?? 0) + 1);
    }
    expect(counts.size).toBe(40);
    for (const count of counts.values())
      expect(Math.abs(count / 2000 - 1 / 40)).toBeLessThan(monteCarloBand(1 / 40, 2000));
  });
});
