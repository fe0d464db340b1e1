import { describe, expect, it } from "vitest";
import { dayIn, todayOf } from "@/app/_server/clock";

describe("today", () => {
  it("is the day where the zone is: one instant, three days", () => {
    const instant = new Date("2026-03-29T10:30:00Z");
    expect(dayIn("Pacific/Kiritimati", instant)).toBe("2026-03-30");
    expect(dayIn("Europe/Berlin", instant)).toBe("2026-03-29");
    expect(dayIn("Pacific/Pago_Pago", instant)).toBe("2026-03-28");
  });

  it("changes at local midnight, also on days of 23 and of 25 hours", () => {
    for (const [before, after] of [
      ["2026-03-28T22:59:59Z", "2026-03-28T23:00:00Z"],
      ["2026-10-25T22:59:59Z", "2026-10-25T23:00:00Z"],
    ] as const) {
      const [first, second] = [dayIn("Europe/Berlin", new Date(before)), dayIn("Europe/Berlin", new Date(after))];
      expect(Date.parse(second) - Date.parse(first)).toBe(86_400_000);
    }
  });

  it("does not hang on the zone of the machine", () => {
    const kept = process.env.TZ;
    const instant = new Date("2026-06-30T23:30:00Z");
    const days = ["UTC", "Asia/Tokyo", "America/Los_Angeles"].map((zone) => {
      process.env.TZ = zone;
      return dayIn("Europe/Berlin", instant);
    });
    process.env.TZ = kept;
    expect(days).toEqual(["2026-07-01", "2026-07-01", "2026-07-01"]);
  });

  it("stands still in the demo", () => {
    expect(todayOf({ fixedToday: "2026-09-30", zone: "Europe/Berlin" })).toBe("2026-09-30");
  });
});
