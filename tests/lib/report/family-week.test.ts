import { describe, expect, it } from "vitest";
import type { FamilyLogSource } from "@/lib/report/family-log-source";
import { familyWeek } from "@/lib/report/family-week";
import { wordsFor } from "@/lib/words/catalogue";
import { LOG_SOURCE } from "./family-log-fixture";

const week = (source: Partial<FamilyLogSource> = {}) => familyWeek(wordsFor("en"), { ...LOG_SOURCE, ...source });
const [own] = LOG_SOURCE.entries;
if (!own) throw new Error("the log has no entry");

describe("the last seven days", () => {
  it("stand as cells over a month's end, today last: minutes, or a dash", () => {
    const { week: days } = week();
    expect(days.map(({ weekday, said, unit }) => `${weekday} ${said} ${unit}`)).toEqual([
      ...["Mon – ", "Tue – ", "Wed – ", "Thu – ", "Fri – ", "Sat 1 min", "Sun 12 min"],
    ]);
    expect(days.slice(-2).map(({ spoken, when }) => [spoken, when])).toEqual([
      ["Sat 28 Feb: 1 minute", "before"],
      ["Sun 1 Mar: 12 minutes, 30 balls, hard", "today"],
    ]);
  });

  it("say balls where no minutes are known, and the sum of a day; pain alone is no practice", () => {
    const entries = [
      { ...own, id: "c", minutes: null, balls: 30, felt: null },
      { ...own, id: "d", minutes: null, balls: 12, felt: null },
      { ...own, id: "e", day: "2026-02-27", minutes: null, balls: null, felt: null, pain: "knee" as const },
    ];
    const { week: days, heading } = week({ entries });
    expect([days.at(-1)?.said, days.at(-1)?.unit, days.at(-3)?.said]).toEqual(["42", "balls", "–"]);
    expect(days.at(-1)?.spoken).toBe("Sun 1 Mar: 30 balls; 12 balls");
    expect(heading).toBe("Practice in the last 7 days: 1 day");
  });

  it("are counted against what was asked, never past it, and not at all for the youngest", () => {
    expect(week().heading).toBe("Practice in the last 7 days: 2 days");
    expect(week({ daysAWeek: 5 }).heading).toBe("Practice in the last 7 days: 2 of 5 days");
    expect(week({ daysAWeek: 1 }).heading).toBe("Practice in the last 7 days: 2 days");
    expect(week({ entries: [] }).heading).toBe("Practice in the last 7 days: none yet");
    expect(week({ reader: "young" }).heading).toBe("Practice in the last 7 days");
  });

  it("are undone where the family wrote them down, not what the coach saw; what is older stands apart", () => {
    const undo = {
      label: "Undo for Dot: 12 minutes, 30 balls, hard, Sun 1 Mar",
      action: "/api/family/page/practice/back",
      hidden: [{ name: "practiceId", value: "a" }],
    };
    expect([week().undo, week().older]).toEqual([[undo], null]);
    const older = week({ entries: [{ ...own, day: "2026-02-23" }] });
    expect([older.undo, older.older?.undo.length]).toEqual([[], 1]);
    expect(week({ entries: [{ ...own, day: "2026-02-22" }] }).older).toBeNull();
  });
});
