import { describe, expect, it } from "vitest";
import { askableCares } from "@/lib/verdict/askable-cares";

const names = (usual: number, checked?: number) => askableCares(usual, checked).map((each) => each.name);

describe("the cares that can be asked for", () => {
  it("usual 4, a check leaves 1: as usual, half (2), checked (1 / 4)", () => {
    expect(askableCares(4, 1)).toEqual([
      { name: "usual", care: 1 },
      { name: "half", care: 0.5 },
      { name: "checked", care: 0.25 },
    ]);
  });

  it("usual 1, a check leaves 0.6: half can be had (0.5 x 1.25 reaches 0.6); a check would leave no less", () => {
    expect(names(1, 0.6)).toEqual(["usual", "half"]);
  });

  it("usual 1, a check leaves 0.7: half is more than a check gives, so the check itself is the other stop", () => {
    expect(names(1, 0.7)).toEqual(["usual", "checked"]);
  });

  it("a phone that stands as well as a check leaves it can't stand better, nor one without error", () => {
    expect(names(1, 0.9)).toEqual(["usual"]);
    expect(names(0, 0.9)).toEqual(["usual"]);
    expect(names(0)).toEqual(["usual"]);
  });

  it("where nobody knows what a check leaves, half may be asked for", () => {
    expect(names(2)).toEqual(["usual", "half"]);
  });
});
