import { describe, expect, it } from "vitest";
import { BUILT_IN } from "@/lib/domain/catalogue";
import type { Fundamental } from "@/lib/domain/fundamental";
import type { Hand } from "@/lib/domain/handedness";
import { wordsFor } from "@/lib/words/catalogue";
import { sayCount, saySizeBelow, sayStoryPart, sayStorySlip } from "@/lib/words/say-family-story";

const words = wordsFor("en");
const of = (id: string): Fundamental => {
  const found = BUILT_IN.find((each) => each.id === id);
  if (found === undefined) throw new Error(id);
  return found;
};
const slip = (id: string, direction: "up" | "down", hand: Hand, form: "started" | "again" | "more" = "started") =>
  sayStorySlip(words, { fundamental: of(id), hand, whose: "your" }, { direction, form, when: "in April" });

/**
 * A move up in the handedness-neutral sign, as a right-hander and a left-hander see it: away from the target is a right-hander's
 * right and a left-hander's left; closed feet point to that side too.
 */
const UP: readonly (readonly [string, string, string])[] = [
  [
    "trail-v",
    "Your right hand has started to turn more to the right on the club",
    "Your left hand has started to turn more to the left on the club",
  ],
  [
    "lead-v",
    "Your left hand has started to turn more to the right on the club",
    "Your right hand has started to turn more to the left on the club",
  ],
  ["foot-line", "Your feet have started to point right", "Your feet have started to point left"],
  [
    "setup-tilt",
    "Your body has started to lean more to the right at the start",
    "Your body has started to lean more to the left at the start",
  ],
  [
    "posture-bend",
    "Your body has started to bend more at the start",
    "Your body has started to bend more at the start",
  ],
  [
    "ball-position",
    "Your ball has started to lie closer to the left foot",
    "Your ball has started to lie closer to the right foot",
  ],
  ["shoulder-line", "Your shoulders have started to point right", "Your shoulders have started to point left"],
  ["hinge", "Your wrists have started to bend more", "Your wrists have started to bend more"],
  [
    "shaft-line",
    "Your club has started to go back further from the body",
    "Your club has started to go back further from the body",
  ],
  [
    "hip-sway",
    "Your hips have started to move more to the right as the club goes back",
    "Your hips have started to move more to the left as the club goes back",
  ],
  [
    "tilt-kept",
    "Your body has started to lean more to the right as the club goes back",
    "Your body has started to lean more to the left as the club goes back",
  ],
  [
    "top-tilt",
    "Your body has started to lean more to the right at the top",
    "Your body has started to lean more to the left at the top",
  ],
  [
    "head-drift",
    "Your head has started to move more to the right as the club goes back",
    "Your head has started to move more to the left as the club goes back",
  ],
  [
    "impact-tilt",
    "Your body has started to lean more to the right at the hit",
    "Your body has started to lean more to the left at the hit",
  ],
  [
    "hip-shift",
    "Your hips have started to move less to the left at the hit",
    "Your hips have started to move less to the right at the hit",
  ],
  [
    "shaft-lean",
    "Your club has started to lean more to the left at the hit",
    "Your club has started to lean more to the right at the hit",
  ],
];

describe("a move away from the goal, in the student's own left and right", () => {
  it.each(UP)("up, of %s: %s", (id, right, left) => {
    expect(slip(id, "up", "right")).toBe(right);
    expect(slip(id, "up", "left")).toBe(left);
  });

  it("is told of every fundamental, the other way in other words", () => {
    expect(UP.map(([id]) => id)).toEqual(BUILT_IN.map(({ id }) => id));
    for (const [id, right, left] of UP) {
      expect(slip(id, "down", "right")).not.toBe(right);
      expect(slip(id, "down", "left")).not.toBe(left);
      // A sign that the picture mirrors turns left and right and nothing else, and one that it doesn't turns nothing.
      const turned = slip(id, "down", "right").replace(/left|right/g, (side) => (side === "left" ? "right" : "left"));
      expect(slip(id, "down", "left")).toBe(turned);
    }
  });

  it("says again, or compares with what was", () => {
    expect(slip("foot-line", "up", "right", "again")).toBe("Your feet have started to point right again");
    expect(slip("foot-line", "down", "right", "more")).toBe("Your feet point more to the left than in April");
    expect(slip("shaft-line", "down", "right", "more")).toBe("Your club goes back closer to the body than in April");
    const own = { id: "own-tempo", ownName: "Tempo" } as const;
    const more = { direction: "up", form: "again", when: "in April" } as const;
    expect(sayStorySlip(words, { fundamental: own, hand: "right", whose: { name: "Dot" } }, more)).toBe(
      "Dot’s “Tempo” is not as good as in April",
    );
  });
});

describe("small words", () => {
  it("whose a thing is: the student's own, or by name where it stands alone", () => {
    const part = (id: string, hand: Hand) => sayStoryPart(words, { fundamental: of(id), hand, whose: { name: "Dot" } });
    expect(part("trail-v", "right")).toBe("Dot’s right-hand grip");
    expect(part("trail-v", "left")).toBe("Dot’s left-hand grip");
    expect(sayStoryPart(words, { fundamental: of("foot-line"), hand: "left", whose: "your" })).toBe(
      "the way your feet point",
    );
  });

  it("counts in words up to twelve, and sizes rounded up so that what is smaller stays smaller", () => {
    expect([1, 7, 12, 13].map((count) => sayCount(words, count))).toEqual(["one", "seven", "twelve", "13"]);
    expect(saySizeBelow(words, 1.2, "deg")).toBe("2 degrees");
    expect(saySizeBelow(words, 1, "deg")).toBe("1 degree");
    expect(saySizeBelow(words, 0.41, "deg")).toBe("0.5 degrees");
    expect(saySizeBelow(words, 2.01, "pct-stance")).toBe("3 % of how wide you stand");
  });
});
