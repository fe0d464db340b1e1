import { describe, expect, it } from "vitest";
import { contactClaims } from "@/lib/verdict/contact-claim";
import { POLICY } from "@/lib/verdict/policy";

const policy = {
  ...POLICY,
  firstLook: 1,
  limit: 2,
  limitAlone: 1.5,
  limitEarlyRise: 0,
  limitLateRise: 0,
  holdLimit: 0,
};
const said = (evidence: readonly [number, number][]) =>
  contactClaims(
    evidence.map(([logBayesFactor, upChance]) => ({ kind: "ok", value: { logBayesFactor, upChance } })),
    policy,
  ).map((claim) => (claim === null ? "-" : `${claim.direction}${claim.provedAt}`));

describe("contactClaims", () => {
  it("one look of 2 is not enough, two in a row are, one of 3.5 alone is", () => {
    expect(
      said([
        [2, 1],
        [1.9, 1],
        [2, 1],
        [2, 1],
      ]),
    ).toEqual(["-", "-", "-", "up3"]);
    expect(
      said([
        [3.4, 1],
        [3.5, 0],
      ]),
    ).toEqual(["-", "down1"]);
  });

  it("stands at 0 in its direction, is taken back below it or when the direction turns", () => {
    expect(
      said([
        [4, 1],
        [0, 0.6],
        [-0.1, 1],
        [1, 1],
      ]),
    ).toEqual(["up0", "up0", "-", "-"]);
    expect(
      said([
        [4, 1],
        [1, 0.5],
        [4, 0],
      ]),
    ).toEqual(["up0", "-", "down2"]);
  });

  it("a direction of .94 proves nothing, nor does too little", () => {
    expect(said([[9, 0.94]])).toEqual(["-"]);
    expect(contactClaims([{ kind: "too-few", have: 1, need: 4 }], policy)).toEqual([null]);
  });
});
