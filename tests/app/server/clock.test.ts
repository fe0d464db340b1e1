import { describe, expect, it } from "vitest";
import { dayAndTimeIn, dayIn, timeIn, todayOf } from "@/app/_server/clock";

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
    // Written back as it was: without one, the word "undefined" would be one.
    if (kept === undefined) delete process.env.TZ;
    else process.env.TZ = kept;
    expect(days).toEqual(["2026-07-01", "2026-07-01", "2026-07-01"]);
  });

  it("is the same day and time of day where many instants are asked at once", () => {
    for (const zone of ["Pacific/Kiritimati", "Europe/Berlin", "Asia/Kathmandu", "America/St_Johns"]) {
      const local = dayAndTimeIn(zone);
      for (let n = 0; n < 400; n++) {
        // Every 61 minutes over both nights on which clocks change, midnight among them.
        const instant = new Date(
          Date.parse(n % 2 === 0 ? "2026-03-22T00:00:00Z" : "2026-10-20T00:00:00Z") + n * 3_660_000,
        );
        expect(local(instant)).toEqual({ day: dayIn(zone, instant), time: timeIn(zone, instant) });
      }
    }
  });

  it("stands still in the demo", () => {
    expect(todayOf({ fixedToday: "2026-09-30", zone: "Europe/Berlin" })).toBe("2026-09-30");
  });
});
