import { describe, expect, it } from "vitest";
import { tieCovariance } from "@/lib/stats/tie-covariance";
import { madeSeries } from "./made-series";

const groups = (change: (i: number) => object) =>
  madeSeries([[1], [2], [3]]).groups.map((group, i) => ({ ...group, sharedErrorSd: i + 1, ...change(i) }));

describe("reference: three groups with shared error sds 1 2 3", () => {
  it("first and third share a draw: 1 x 3 between them, nothing on the diagonal", () => {
    const ties = tieCovariance(
      groups((i) => ({ sharedErrorLabel: i === 1 ? "b" : "a" })),
      9,
    );
    expect([...(ties as Float64Array)]).toEqual([0, 0, 3, 0, 0, 0, 3, 0, 0]);
  });
  it("offset sd 2, the last group has a label of its own: 4 among the first two and on the diagonal", () => {
    const ties = tieCovariance(
      groups((i) => ({ offsetLabel: i === 2 ? "x" : null })),
      2,
    );
    expect([...(ties as Float64Array)]).toEqual([4, 4, 0, 4, 4, 0, 0, 0, 4]);
  });
});

describe("too little: what ties nothing gives null", () => {
  it("no labels, labels of their own, one offset label for all, sds of 0, no groups", () => {
    expect(
      tieCovariance(
        groups(() => ({})),
        2,
      ),
    ).toBeNull();
    expect(
      tieCovariance(
        groups((i) => ({ sharedErrorLabel: `b${i}` })),
        2,
      ),
    ).toBeNull();
    expect(
      tieCovariance(
        groups(() => ({ offsetLabel: "x" })),
        2,
      ),
    ).toBeNull();
    expect(
      tieCovariance(
        groups((i) => ({ sharedErrorLabel: "a", sharedErrorSd: 0, offsetLabel: String(i) })),
        0,
      ),
    ).toBeNull();
    expect(tieCovariance([], 2)).toBeNull();
  });
});
