import { describe, expect, it } from "vitest";
import { chargeOn } from "@/lib/domain/charge";

const days = (fromDay: string, untilDay: string | null, endedAt: string | null = null) => ({
  fromDay,
  untilDay,
  endedAt,
});

describe("chargeOn", () => {
  it("begins with its first day and ends with its last: 3 to 5 November is three days", () => {
    const charge = days("2026-11-03", "2026-11-05");
    const stands = ["02", "03", "04", "05", "06"].map((day) => chargeOn(charge, `2026-11-${day}`));
    expect(stands).toEqual(["to-come", "in-force", "in-force", "in-force", "over"]);
  });

  it("without a last day it goes on", () => {
    expect(chargeOn(days("2026-11-03", null), "2099-01-01")).toBe("in-force");
  });

  it("ended by hand it is over, also before it began", () => {
    expect(chargeOn(days("2026-11-03", null, "2026-11-01T10:00:00Z"), "2026-11-01")).toBe("over");
  });

  it("handed on within its first day it is in force on none: from the 3rd to the 2nd", () => {
    for (const day of ["2026-11-01", "2026-11-02", "2026-11-03", "2026-11-04"])
      expect(chargeOn(days("2026-11-03", "2026-11-02"), day)).toBe("over");
  });
});
