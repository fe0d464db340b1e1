import { describe, expect, it } from "vitest";
import type { DecisionRecord } from "@/lib/domain/drill-decision";
import type { AssignmentRecord } from "@/lib/domain/drill-record";
import { buildDecidePage } from "@/lib/report/build-decide";
import { buildDecisions } from "@/lib/report/build-decisions";
import { wordsFor } from "@/lib/words/catalogue";

const words = wordsFor("en");
const given: AssignmentRecord = {
  ...{ id: "a1", drill: "Rails", drillId: "d2", fundamentalId: "foot-line", start: "2026-08-20", end: null, dose: "" },
  ...{ reps: 20, minutesADay: null, daysAWeek: 4, stopRule: "", remeasureOn: "2026-09-10" },
  ...{ who: "", recordedAt: null, endWhy: null, state: "stands" },
};
const kept: DecisionRecord = {
  ...{ assignmentId: "a1", decision: "keep", why: "half way", remeasureWas: "2026-08-30", day: "2026-08-31" },
  ...{ who: "Wren", recordedAt: "2026-08-31T10:00:00.000Z" },
};
const dayOf = (instant: string) => instant.slice(0, 10);
const page = (change: Partial<AssignmentRecord> = {}, decisions: readonly DecisionRecord[] = []) =>
  buildDecidePage(words, {
    student: { id: "s1", alias: "Dot", birthYear: 2016, hand: "right", zone: "UTC", clubs: "" },
    ...{ given: { ...given, ...change }, today: "2026-09-12", since: null, decisions, dayOf },
  });

describe("the page on which is decided about a drill", () => {
  it.each([
    ["2026-09-10", "Its day to be measured again came on Thu 10 Sep 2026. The reason is kept."],
    ["2026-09-12", "Its day to be measured again came on Sat 12 Sep 2026. The reason is kept."],
    ["2026-09-13", "It is to be measured again on Sun 13 Sep 2026; you may decide before. The reason is kept."],
    [null, "No day to be measured again is set. The reason is kept."],
  ])("to be measured again on %s: %s", (remeasureOn, lede) => {
    expect(page({ remeasureOn })).toMatchObject({ lede, title: "Dot: Rails, keep, change or stop?" });
  });

  it("one that was ended or taken back isn’t decided about any more; pain and load are named in any case", () => {
    expect(page({ end: "2026-09-01" }).title).toBe("Dot: Rails doesn’t run any more");
    expect(page({ state: "taken-back" }).title).toBe("Dot: Rails doesn’t run any more");
    expect(page().cautions.join(" ")).toMatch(/Pain stops every drill.*young body/);
    // No alias in a document's title.
    expect(page().documentTitle).not.toContain("Dot");
  });

  it("its history stands there, latest first, that of other drills left out", () => {
    const later = {
      ...kept,
      decision: "change-goal" as const,
      why: "too narrow",
      day: "2026-09-05",
      remeasureWas: null,
    };
    const part = page({}, [kept, { ...kept, assignmentId: "a9" }, later]).parts[0];
    expect(part?.table?.rows.map(({ cells }) => cells)).toEqual([
      ["Sat 5 Sep 2026", "another goal", "too narrow", "", "Wren, 31 Aug 2026"],
      ["Mon 31 Aug 2026", "kept", "half way", "30 Aug", "Wren, 31 Aug 2026"],
    ]);
  });

  it("without a decision a drill that runs says what comes; one that is over says nothing", () => {
    expect(buildDecisions(words, { given, decisions: [], dayOf })?.paragraphs[0]).toContain("you choose");
    expect(buildDecisions(words, { given: { ...given, end: "2026-09-01" }, decisions: [], dayOf })).toBeNull();
  });
});
