import { describe, expect, it } from "vitest";
import { BUILT_IN } from "@/lib/domain/catalogue";
import type { Fundamental } from "@/lib/domain/fundamental";
import { goalInForce, type RecordedBand } from "@/lib/domain/goal-band";
import { markReplaced } from "@/lib/domain/replaced-bands";

const hinge = BUILT_IN.find(({ id }) => id === "hinge") as Fundamental;
const band = (from: string, entered: string, change: Partial<RecordedBand> = {}): RecordedBand => ({
  ...{ fundamentalId: "hinge", clubGroup: "iron", scope: "student", ageFrom: null, ageTo: null, studentId: "s1" },
  ...{ id: `${from} ${entered}`, low: 80, high: 100, reason: "r", who: "Wren", from },
  createdAt: `${entered}T10:00:00.000Z`,
  ...change,
});
const marks = (...bands: readonly RecordedBand[]) =>
  markReplaced(bands, (instant) => instant.slice(0, 10)).map(({ replaced }) => replaced ?? false);

describe("a band that was planned and replaced before it began", () => {
  const slip = band("2027-03-01", "2026-03-01");

  it("is the one entered before another of its series that begins earlier, and it never holds", () => {
    const right = band("2026-03-02", "2026-03-02", { low: 70 });
    expect(marks(right, slip)).toEqual([false, true]);
    const bands = markReplaced([right, slip], (instant) => instant.slice(0, 10));
    const student = { id: "s1", birthYear: null };
    expect(goalInForce(bands, hinge, "iron", student, "2027-03-01").low).toBe(70);
    expect(goalInForce([right, slip], hinge, "iron", student, "2027-03-01").low).toBe(80);
  });

  it("not one that had begun by then, nor one entered later, nor another student's, clubs' or age's", () => {
    expect(marks(band("2026-02-01", "2027-03-01"), slip)).toEqual([false, false]);
    expect(marks(band("2026-02-01", "2026-02-01"), slip)).toEqual([false, false]);
    expect(marks(band("2026-03-02", "2026-03-02", { studentId: "s2" }), slip)).toEqual([false, false]);
    expect(marks(band("2026-03-02", "2026-03-02", { clubGroup: "driver" }), slip)).toEqual([false, false]);
    expect(marks(band("2026-03-02", "2026-03-02", { scope: "academy", studentId: null }), slip)).toEqual([
      false,
      false,
    ]);
  });
});
