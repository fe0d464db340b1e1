import { describe, expect, it } from "vitest";
import { BUILT_IN } from "@/lib/domain/catalogue";
import type { Fundamental } from "@/lib/domain/fundamental";
import { signPicture } from "@/lib/domain/sign-picture";

describe("what plus looks like", () => {
  it("every built-in fundamental has a picture of its own kind, never the bare axis", () => {
    for (const fundamental of BUILT_IN) expect([fundamental.id, signPicture(fundamental).kind]).not.toContain("axis");
  });

  it("fits the view: what leans to the ball and what turns is filmed down the line, the rest from the front", () => {
    for (const fundamental of BUILT_IN) {
      const picture = signPicture(fundamental);
      const behind = picture.kind === "turn" || (picture.kind === "lean" && picture.plus === "ball");
      expect([fundamental.id, fundamental.view]).toEqual([fundamental.id, behind ? "down-the-line" : "face-on"]);
    }
  });

  it("an academy's own fundamental has the axis alone, whatever its fields", () => {
    const own: Fundamental = { ...(BUILT_IN[0] as Fundamental), id: "own-trail-v", ownName: "Mine" };
    expect(signPicture(own)).toEqual({ kind: "axis" });
  });
});
