import { describe, expect, it } from "vitest";
import { BUILT_IN, type BuiltInId } from "@/lib/domain/catalogue";
import { sayGroupJump } from "@/lib/report/build-group-jump";
import type { GroupJump } from "@/lib/verdict/group-jump";
import { wordsFor } from "@/lib/words/catalogue";

const fundamental = (id: BuiltInId) => BUILT_IN.find((each) => each.id === id) as (typeof BUILT_IN)[number];
const jump: GroupJump = {
  view: "face-on",
  students: 5,
  together: 5,
  offBy: 7.6,
  sd: 1.02,
  moved: [
    { fundamental: fundamental("hinge"), by: 5.3 },
    { fundamental: fundamental("setup-tilt"), by: 4.8 },
  ],
};
const said = (change: Partial<GroupJump>) => sayGroupJump(wordsFor("en"), { ...jump, ...change }, "2026-03-20");

describe("a jump common to a group, in words", () => {
  it("says who moved, by how much, and where the phone seems to have stood, ± 95 of 100", () => {
    expect(said({})).toMatch(/^Group session of Fri 20 Mar 2026, face-on: all 5 students/);
    expect(said({})).toMatch(/Wrist hinge \(\+5°\); and Side tilt, setup \(\+5°\) on average/);
    expect(said({})).toMatch(/about 8° \(±2\) too far toward the target/);
    expect(said({ offBy: -7.6, together: 4 })).toMatch(/: 4 of the 5 students .* away from the target/);
  });

  it("down the line it speaks of the line and of centimetres", () =>
    expect(said({ view: "down-the-line", offBy: 4 })).toMatch(
      /about 4° \(±2; 28 cm at 4 m\) off the line, on the ball’s/,
    ));

  it("always says that no verdict is changed by it, and what to do", () => {
    for (const view of ["face-on", "down-the-line"] as const)
      expect(said({ view })).toMatch(/changes no verdict by itself.*set the session aside\.$/);
  });
});
