import { expect, it } from "vitest";
import { BUILT_IN } from "@/lib/domain/catalogue";
import type { DueDrill } from "@/lib/domain/drill-record";
import { buildDrillsDue, noteDrillsDue } from "@/lib/report/build-drills-due";
import { wordsFor } from "@/lib/words/catalogue";

const words = wordsFor("en");
const due: DueDrill = {
  ...{ studentId: "s1", alias: "Dot", assignmentId: "a 1", drill: "Wall", fundamentalId: "hip-sway" },
  ...{ start: "2026-08-20", remeasureOn: "2026-09-10", filmedOn: null },
};
const build = (rows: readonly DueDrill[]) =>
  buildDrillsDue(words, { due: rows, fundamentals: BUILT_IN, today: "2026-09-12" });

it("each drill leads to its decision, and says since when it is due and whether a film has come", () => {
  const part = build([due, { ...due, remeasureOn: "2026-09-12", filmedOn: "2026-09-12" }]);
  expect(part.heading).toBe("2 drills are due to be measured again");
  expect(part.items).toEqual([
    {
      href: "/students/s1/drills/a%201/decide",
      alias: "Dot",
      text: "Wall for Hip sway, top, since 20 Aug: due for 2 days, no film since",
    },
    expect.objectContaining({ text: expect.stringContaining("due today, filmed on 12 Sep") }),
  ]);
  expect(part.table?.rows[0]).toEqual({
    href: "/students/s1/drills/a%201/decide",
    cells: ["Dot", "Wall", "20 Aug", "due for 2 days", "no film since"],
    tone: "plain",
  });
});

it("without any it says so, has no table and no line", () => {
  expect(build([])).toMatchObject({ heading: "No drill is due to be measured again", items: [], table: null });
});

it("of a fundamental that the catalogue has no more it says another one", () => {
  expect(build([{ ...due, fundamentalId: "own-gone" }]).items[0]?.text).toContain("for another fundamental");
});

it("the roster names five of them and counts the rest; none is no part of it", () => {
  const noted = noteDrillsDue(words, build(Array.from({ length: 7 }, () => due)));
  expect(noted?.items).toHaveLength(5);
  expect(noted?.more).toBe("2 more stand on the list of what is due.");
  expect(noteDrillsDue(words, build([due]))?.more).toBe("");
  expect(noteDrillsDue(words, build([]))).toBeNull();
});
