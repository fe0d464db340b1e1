import { expect, it } from "vitest";
import { lastDay } from "@/lib/domain/last-day";

it.each([
  ["2026-03-01", 12, "2027-02-28"],
  ["2027-03-01", 12, "2028-02-29"],
  ["2026-01-31", 1, "2026-02-27"],
  ["2026-11-26", 24, "2028-11-25"],
  ["2026-01-01", 0, "2025-12-31"],
])("from %s, %i months end on %s", (from, months, last) => expect(lastDay(from, months)).toBe(last));

it("a text that is no day throws with it", () => expect(() => lastDay("2026-02-30", 1)).toThrow("2026-02-30"));
