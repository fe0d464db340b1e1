import { describe, expect, it } from "vitest";
import { evidence } from "@/lib/stats/evidence";
import { evidenceLooks } from "@/lib/stats/evidence-looks";
import { startNoiseModel } from "@/lib/stats/start-noise-model";
import { madeSeries, SMALL_GRID, seeded, simulatedSeries } from "./made-series";

describe("reference: look by look", () => {
  it("entry i is what evidence says of groups 0 to i, to the last bit", () => {
    const series = simulatedSeries({ groups: 15, level: (i) => (i < 8 ? 0 : 5) }, seeded(21));
    for (const noise of [SMALL_GRID, startNoiseModel("s")]) {
      const looks = evidenceLooks(series, noise);
      expect(looks).toHaveLength(15);
      looks.forEach((look, i) => {
        expect(look).toEqual(evidence({ ...series, groups: series.groups.slice(0, i + 1) }, noise));
      });
    }
  });
  it("no look-ahead: a longer season begins with the looks of its prefix", () => {
    const series = simulatedSeries({ groups: 12 }, seeded(22));
    const prefix = { ...series, groups: series.groups.slice(0, 7) };
    expect(evidenceLooks(series, SMALL_GRID).slice(0, 7)).toEqual(evidenceLooks(prefix, SMALL_GRID));
  });
  it("an unused group repeats the look before it", () => {
    const series = simulatedSeries({ groups: 8 }, seeded(23));
    const holed = { ...series, groups: series.groups.map((group, i) => ({ ...group, used: i !== 6 && i !== 0 })) };
    const looks = evidenceLooks(holed, SMALL_GRID);
    expect(looks[6]).toEqual(looks[5]);
    expect(looks[0]).toEqual({ kind: "too-few", have: 0, need: 4 });
  });
});

describe("too little and bad input", () => {
  it("no groups give no looks; a bad value throws", () => {
    expect(evidenceLooks(madeSeries([]), SMALL_GRID)).toEqual([]);
    expect(() => evidenceLooks(madeSeries([[Number.NaN]]), SMALL_GRID)).toThrow("NaN");
  });
});
