import { describe, expect, it } from "vitest";
import { BUILT_IN } from "@/lib/domain/catalogue";
import { signPicture } from "@/lib/domain/sign-picture";
import { signShape } from "@/lib/report/sign-shapes";

const shapes = [...BUILT_IN.map((each) => signPicture(each)), { kind: "axis" } as const].map((picture) => ({
  picture,
  shape: signShape(picture),
}));

describe("the shapes of plus", () => {
  it("each has an arrow with a length, and all but the axis show one thing that is measured", () => {
    for (const { picture, shape } of shapes) {
      const [from, to] = shape.plus;
      expect(Math.hypot(to.x - from.x, to.y - from.y)).toBeGreaterThan(2);
      const told = [...shape.lines, ...shape.rounds].filter(({ role }) => role === "told").length;
      expect([picture.kind, told > 0]).toEqual([picture.kind, picture.kind !== "axis"]);
    }
  });

  it("a lean and its arrow go the same way, and a bend leans more than a tilt", () => {
    const lean = (plus: "away" | "target" | "ball") => {
      const shape = signShape({ kind: "lean", of: "spine", plus });
      const [foot, top] = shape.lines.find(({ role }) => role === "told")?.points ?? [];
      const [from, to] = shape.plus;
      return { line: (top?.x ?? NaN) - (foot?.x ?? NaN), arrow: to.x - from.x };
    };
    for (const plus of ["away", "target", "ball"] as const)
      expect([plus, Math.sign(lean(plus).line)]).toEqual([plus, Math.sign(lean(plus).arrow)]);
    expect(Math.abs(lean("ball").line)).toBeGreaterThan(Math.abs(lean("away").line));
    expect(lean("away").line).toBeCloseTo(-lean("target").line, 12);
  });
});
