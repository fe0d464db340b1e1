import { describe, expect, it } from "vitest";
import type { BuiltInId } from "@/lib/domain/catalogue";
import { departures, type FilmedSession } from "@/lib/verdict/fingerprint-residuals";
import { builtIn } from "./filmed-season";
import { plainFilm as plain } from "./plain-film";

const usual = [plain("a"), plain("b"), plain("c")];

describe("departures, worked by hand", () => {
  it("three sessions of three equal swings at 5, then 8: +3; swing sd 1.5 is the reader's; day variance 6 x .5625 / 8 = .421875; variance 4/3 of it + .75 + .25 = 1.5625", () => {
    const [first] = departures([plain("d", { "setup-tilt": 3 })], usual);
    expect(first?.residual).toBeCloseTo(3, 12);
    expect(first?.variance).toBeCloseTo(1.5625, 12);
    expect(first?.changeVariance).toBeCloseTo(16 * (0.421875 + 0.75), 12);
    expect(first?.loadings).toEqual([0.7, 1]);
  });

  it("two sessions of one placement weigh half: .421875 x (1/2 + 1/3) + .75/2 + .75/3 = .9765625", () => {
    const both = departures([plain("d", { hinge: 2 }), plain("e", { hinge: 4 })], usual);
    const hinge = both.find(({ fundamental }) => fundamental.id === "hinge");
    expect(hinge?.residual).toBeCloseTo(3, 12);
    expect(hinge?.variance).toBeCloseTo(0.9765625, 12);
  });

  it("another reader adds the offset between readers: (1.5 x 1.5)² = 5.0625", () => {
    const other = plain("d");
    const read = { ...other, fundamentals: other.fundamentals.map((each) => ({ ...each, reader: "Lark" })) };
    expect(departures([read], usual)[0]?.variance).toBeCloseTo(1.5625 + 5.0625, 12);
  });

  it("a difference is left out where both parts are there, and a grip line whose way nobody knows always", () => {
    const more = plain("d");
    const with3 = (ids: readonly BuiltInId[]): FilmedSession => ({
      ...more,
      fundamentals: ids.map((id) => ({
        fundamental: builtIn(id),
        swings: [1, 1, 1],
        captureSd: 1,
        reader: "Wren",
        era: "now",
      })),
    });
    const told = (ids: readonly BuiltInId[]) =>
      departures([with3(ids)], [with3(ids), with3(ids), with3(ids)]).map(({ fundamental }) => fundamental.id);
    expect(told(["setup-tilt", "top-tilt", "tilt-kept", "trail-v"])).toEqual(["setup-tilt", "top-tilt"]);
    expect(told(["setup-tilt", "tilt-kept", "hinge"])).toEqual(["setup-tilt", "tilt-kept", "hinge"]);
  });

  it("a track that began anew is not held against what it was before: too few, so left out", () => {
    const anew = plain("d");
    const moved = {
      ...anew,
      fundamentals: anew.fundamentals.map((each) =>
        each.fundamental.id === "hinge" ? { ...each, era: "anew" } : each,
      ),
    };
    expect(departures([moved], usual).map(({ fundamental }) => fundamental.id)).not.toContain("hinge");
  });
});
