import { describe, expect, it } from "vitest";
import type { TrackVerdict } from "@/lib/domain/track-verdict";
import { provedIn, provedMonths } from "@/lib/report/proved-months";
import { track } from "./made-roster";

type Change = TrackVerdict["changes"][number];
const change = (verdict: "gain" | "slip" | "steady", to: string, moved: Change["moved"] = null) =>
  ({ verdict, moved, from: "2031-01-01", to, provedOn: to }) as unknown as Change;
const changed = (listed: boolean, ...changes: readonly Change[]) =>
  track("hinge", { changes, change: changes.at(-1) ?? null, listed, verdict: changes.at(-1)?.verdict ?? "open" });

describe("gains and slips by month", () => {
  it("stand in the month from which they surely hold, and only where the roster's list has them", () => {
    expect(
      provedMonths([changed(true, change("gain", "2031-04-30")), changed(false, change("slip", "2031-04-02"))]),
    ).toEqual([{ verdict: "gain", month: "2031-04" }]);
    expect([...provedIn([changed(true, change("slip", "2031-05-01"))])]).toEqual(["slip-2031-05"]);
  });

  it("a move that is neither better nor worse counts for none", () => {
    expect(provedMonths([changed(true, change("gain", "2031-04-30", "within"))])).toEqual([]);
  });

  it("an earlier change of a track counts where it stood on the list until the next was proved", () => {
    const twice = changed(true, change("gain", "2031-03-05"), change("slip", "2031-06-05"));
    const looks = [{ date: "2031-03-06", listed: true }] as unknown as TrackVerdict["looks"];
    expect(provedMonths([{ ...twice, verdict: { ...twice.verdict, looks } as TrackVerdict }])).toHaveLength(2);
    expect(provedMonths([{ ...twice, verdict: { ...twice.verdict, looks: [] } }])).toEqual([
      { verdict: "slip", month: "2031-06" },
    ]);
  });
});
