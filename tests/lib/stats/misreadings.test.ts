import { describe, expect, it } from "vitest";
import { misreadings } from "@/lib/stats/misreadings";
import { madeSeries, seeded, simulatedSeries } from "./made-series";

describe("reference: by hand", () => {
  it("one 46 among 4 to 7, spread about 1, is found where it stands", () => {
    expect(
      misreadings(
        madeSeries([
          [4, 6, 5],
          [7, 46, 5],
          [6, 5, 4],
          [5, 5, 6],
        ]),
      ),
    ).toEqual([{ group: 1, replicate: 1 }]);
  });
  it("positions count unused groups, which are not searched", () => {
    const series = madeSeries([
      [4, 900, 5],
      [4, 6, 5],
      [7, 46, 5],
      [6, 5, 4],
      [5, 5, 6],
    ]);
    const first = series.groups.map((group, i) => ({ ...group, used: i > 0 }));
    expect(misreadings({ ...series, groups: first })).toEqual([{ group: 2, replicate: 1 }]);
  });
});

describe("too little and bad input", () => {
  it("where half of a group or more lie far out, none is called: 0 0 50 50 about a spread of 1, and all of 0 25 50 75", () => {
    const quiet = [
      [4, 6, 5],
      [7, 6, 5],
      [6, 5, 4],
      [5, 5, 6],
      [5, 4, 6],
    ];
    expect(misreadings(madeSeries([...quiet, [0, 0, 50, 50]]))).toEqual([]);
    expect(misreadings(madeSeries([...quiet, [0, 25, 50, 75]]))).toEqual([]);
    expect(misreadings(madeSeries([...quiet, [5, 5, 50, 6, 5]]))).toEqual([{ group: 5, replicate: 2 }]);
  });
  it("two replicates can't tell which is wrong; three degrees of freedom tell nothing", () => {
    expect(
      misreadings(
        madeSeries([
          [4, 90],
          [5, 6],
          [5, 4],
          [6, 5],
          [5, 5],
        ]),
      ),
    ).toEqual([]);
    expect(
      misreadings(
        madeSeries([
          [4, 5, 90],
          [5, 6],
        ]),
      ),
    ).toEqual([]);
    expect(misreadings(madeSeries([]))).toEqual([]);
  });
  it("a rounded series whose replicates hardly differ doesn't accuse them: the reading error is the floor", () => {
    expect(
      misreadings(
        madeSeries([
          [5, 5, 5, 6],
          [5, 5, 5],
          [6, 6, 6],
          [5, 5, 5],
        ]),
      ),
    ).toEqual([]);
  });
  it("NaN throws", () => {
    expect(() => misreadings(madeSeries([[Number.NaN]]))).toThrow("NaN");
  });
});

describe("calibration: 200 series of 10 groups of 5", () => {
  it("of 10,000 sound Gaussian replicates at most 0.1 % are accused; of 200 misread by 30 (10 sds) at least 98 %", () => {
    const random = seeded(31);
    let accused = 0;
    let caught = 0;
    for (let r = 0; r < 200; r++) {
      const series = simulatedSeries({ groups: 10 }, random);
      accused += misreadings(series).length;
      const wrong = series.groups.map((group, i) =>
        i === 4 ? { ...group, values: group.values.map((value, j) => (j === 2 ? value + 30 : value)) } : group,
      );
      caught += misreadings({ ...series, groups: wrong }).some((at) => at.group === 4 && at.replicate === 2) ? 1 : 0;
    }
    expect(accused).toBeLessThanOrEqual(10);
    expect(caught).toBeGreaterThanOrEqual(196);
  });
});
