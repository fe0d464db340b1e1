import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { buildDecidesPage, promisedFalse } from "@/lib/report/build-decides";
import { MEASURED, measuredSeason } from "@/lib/verdict/measured";
import { POLICY, POLICY_VERSION } from "@/lib/verdict/policy";
import { wordsFor } from "@/lib/words/catalogue";
import { measuredOf } from "@/tests/calibration/measured-of";
import type { CalibrationRun } from "@/tests/calibration/said-table";
import { BEYOND, CHANGED, PROMISED } from "@/tests/calibration/scenarios";

const page = buildDecidesPage(wordsFor("en"));
const text = JSON.stringify(page);

describe("what pages quote of the calibration", () => {
  it("is what its last kept run came to", () => {
    const run = JSON.parse(readFileSync("tests/calibration/last-run.json", "utf8")) as CalibrationRun;
    expect(MEASURED).toEqual(measuredOf(run));
  });

  it("was measured under the policy in force, on every kind of season there is", () => {
    expect(MEASURED.policyVersion).toBe(POLICY_VERSION);
    expect(Object.keys(MEASURED.seasons)).toEqual([...PROMISED, ...BEYOND, ...CHANGED].map((season) => season.name));
  });

  it("a kind of season that was not measured throws", () => {
    expect(() => measuredSeason("on the moon")).toThrow("on the moon");
  });
});

describe("the page that says how a verdict comes about", () => {
  it("asks the odds of the policy: e^1.85 = 6 twice in a row, e^3.35 = 29 alone", () => {
    expect([Math.round(Math.exp(POLICY.limit)), Math.round(Math.exp(POLICY.limit + POLICY.limitAlone))]).toEqual([
      6, 29,
    ]);
    expect(page.parts[2]?.heading).toBe("Two looks in a row at 6 to one, or one at 29 to one");
    expect(text).toContain(`Before the ${POLICY.limitEarlyLooks}th film and after the ${POLICY.limitLateLooks}th`);
  });

  it("draws as many of a hundred ticks as its label says: unchanged seasons, then true changes by size", () => {
    const shares = [
      promisedFalse().mean,
      ...["1", "1.5", "2", "3"].map((size) => measuredSeason(`step ${size} U`).found),
    ];
    expect(page.measured.rows.map((row) => row.count)).toEqual(shares.map((share) => Math.round(100 * share)));
    for (const row of page.measured.rows) expect(row.countLabel).toBe(`${row.count} of 100`);
  });

  it("names the mean and the largest of the promise, date, command and policy of the run", () => {
    const { mean, largest } = promisedFalse();
    const cells = page.measured.table.rows.map((row) => row.cells.join(" | "));
    expect(cells[0]).toContain((100 * mean).toFixed(1));
    expect(cells[1]).toContain((100 * largest.falseWord).toFixed(1));
    expect(text).toContain(MEASURED.command);
    expect(text).toContain(`policy ${MEASURED.policyVersion}`);
  });

  it("every row is whole, and no limit of the method is left without what helps", () => {
    for (const table of [page.measured.table, page.limits.table])
      for (const row of table.rows) {
        expect(row.cells).toHaveLength(table.columns.length);
        for (const cell of row.cells) expect(cell).not.toBe("");
      }
  });

  it("says none of the words that a coach has to look up", () => {
    expect(text).not.toMatch(/\b(significant|outlier|trend|p-value|score|grade|posterior|Bayes)\b/i);
  });
});
