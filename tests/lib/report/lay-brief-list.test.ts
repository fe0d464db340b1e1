import { describe, expect, it } from "vitest";
import type { BriefFinding } from "@/lib/report/brief-finding";
import { layBriefList, putAwayOf } from "@/lib/report/lay-brief-list";
import { wordsFor } from "@/lib/words/catalogue";

const words = wordsFor("en");
const told: string[] = [];
const finding = (at: number): BriefFinding => ({
  word: "stalled",
  studentId: `s${at}`,
  alias: `Tia ${at}`,
  key: `stalled s${at}`,
  fundamental: { href: "/x", label: "Wrist hinge" },
  say: () => {
    told.push(`s${at}`);
    return "why";
  },
  next: null,
});
const many = Array.from({ length: 20 }, (_, at) => finding(at));
const FRAME = {
  word: "stalled",
  aside: new Set<string>(),
  show: "standing",
  weeks: 6,
  rest: "/r",
  choice: null,
} as const;

describe("one list of the brief", () => {
  it("puts into words only what it shows: six of twenty, and fourteen more", () => {
    told.length = 0;
    const list = layBriefList(words, many, FRAME);
    expect(list?.items).toHaveLength(6);
    expect(told).toHaveLength(6);
    expect(list?.more?.label).toBe("and 14 more, in the table");
  });

  it("its heading counts what isn't dealt with; all dealt with, there is none", () => {
    const aside = new Set(many.slice(0, 19).map(({ key }) => key));
    expect(layBriefList(words, many, { ...FRAME, aside })?.heading).toMatch(/^One student/);
    expect(layBriefList(words, many, { ...FRAME, aside: new Set(many.map(({ key }) => key)) })).toBeNull();
    expect(layBriefList(words, many, { ...FRAME, word: "away" })).toBeNull();
  });

  it("asked to show it all, it shows what was put away after the six that stand", () => {
    const aside = new Set(many.slice(0, 3).map(({ key }) => key));
    const list = layBriefList(words, many, { ...FRAME, aside, show: "all" });
    expect(list?.items.map(({ putAway }) => putAway.state)).toEqual([
      ...Array.from({ length: 6 }, () => "stands"),
      ...Array.from({ length: 3 }, () => "put-away"),
    ]);
    expect(list?.more?.label).toBe("and 11 more, in the table");
  });

  it("the last line's own button is enough for a list of one", () => {
    expect(layBriefList(words, many.slice(0, 1), FRAME)?.all).toBeNull();
    expect(layBriefList(words, many, FRAME)?.all?.word).toBe("stalled");
  });

  it("a button says whom it is about and what", () => {
    expect(putAwayOf(words, finding(1), new Set())).toEqual({
      key: "stalled s1",
      state: "stands",
      label: "Dealt with",
      name: "Dealt with: Tia 1, no proved gain lately, Wrist hinge",
    });
    expect(putAwayOf(words, finding(1), new Set(["stalled s1"])).name).toMatch(/^Bring back: Tia 1/);
  });
});
