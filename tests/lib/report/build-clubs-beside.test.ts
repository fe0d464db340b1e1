import { describe, expect, it } from "vitest";
import { BUILT_IN } from "@/lib/domain/catalogue";
import type { Interval } from "@/lib/domain/track-verdict";
import { type BesideTrack, buildClubsBeside } from "@/lib/report/build-clubs-beside";
import { wordsFor } from "@/lib/words/catalogue";

const words = wordsFor("en");
const footLine = BUILT_IN.find((each) => each.id === "foot-line");
if (footLine === undefined) throw new Error("no such fundamental");

const level = (estimate: number): Interval => ({
  ...{ estimate, low80: estimate - 1, high80: estimate + 1 },
  ...{ low95: estimate - 2, high95: estimate + 2 },
});
function track(clubGroup: string, estimate: number | null, verdict: object = {}): BesideTrack {
  const position = estimate === null ? null : estimate < 2 ? "inside" : "outside";
  return {
    clubName: clubGroup,
    history: {
      studentId: "s",
      clubGroup,
      fundamental: footLine,
      goal: { low: -3, high: 4 },
      sessions: [{ apart: null, session: { day: "2026-05-01" }, swings: [] }],
    },
    verdict: {
      ...{ verdict: "open", change: null, moved: null, listed: false, trend: null },
      ...{ levelNow: estimate === null ? null : level(estimate), position, evidence: { noChange: 0.5 } },
      ...verdict,
    },
  } as unknown as BesideTrack;
}

describe("one fundamental with each club group", () => {
  const part = buildClubsBeside(words, [track("iron", 0), track("driver", 9), track("wood", null)], "iron");

  it("a row a group, each with its own level and place, the others one press away", () => {
    expect(part?.table.rows.map(({ cells, href }) => [cells[0], cells[1]?.replaceAll("\u00a0", " "), href])).toEqual([
      ["iron", "0.0 ± 2.0°", undefined],
      ["driver", "9.0 ± 2.0°", "/students/s/foot-line?club=driver"],
      ["wood", "", "/students/s/foot-line?club=wood"],
    ]);
    expect(part?.heading).toMatch(/^3 club groups side by side: the level of one lies inside/);
  });

  it("all are drawn to one measure, from the least to the most of all levels and edges", () => {
    const [iron, driver, wood] = part?.drawn ?? [];
    expect([iron?.from, iron?.to]).toEqual([driver?.from, driver?.to]);
    expect(iron?.from).toBeCloseTo(-3 - 1.4, 9);
    expect(iron?.to).toBeCloseTo(11 + 1.4, 9);
    expect(wood).toBeNull();
  });

  it("no number stands over several groups: one group’s numbers don’t move with another’s", () => {
    const other = buildClubsBeside(words, [track("iron", 0), track("driver", 3)], "iron");
    expect(other?.table.rows[0]).toEqual(part?.table.rows[0]);
  });

  it("what is proved for its track alone isn’t said as proved", () => {
    const alone = track("driver", 9, { verdict: "gain", change: { size: level(3) }, trend: {} });
    const row = buildClubsBeside(words, [track("iron", 0), alone], "iron")?.table.rows[1]?.cells;
    expect(row?.[3]).toBe("Not settled");
    expect(row?.[4]).toMatch(/enough for this track alone, not yet for the whole roster/);
  });

  it("one group alone is beside nothing", () => expect(buildClubsBeside(words, [track("iron", 0)], "iron")).toBeNull());
});
