import type { Fundamental } from "@/lib/domain/fundamental";
import type { Hand } from "@/lib/domain/handedness";
import { signPicture } from "@/lib/domain/sign-picture";
import type { Words } from "@/lib/words/catalogue";
import { sayDefinition, sayPlus } from "@/lib/words/say-fundamental";
import type { Drawing, DrawnLine, DrawnPoint } from "./drawing-model";
import { mirrorDrawing } from "./mirror-drawing";
import { signShape } from "./sign-shapes";

/** Half the width of the head of the arrow, and its length, in the drawing's unit. */
const HEAD = { half: 3, length: 5 };
/** From the arrow's point to the middle of its plus. */
const BEYOND = 6;
/** The plus's baseline lies this far below its middle. */
const BASELINE = 5;

/** A tenth of a pixel is finer than anybody sees. */
function tenths({ x, y }: DrawnPoint): DrawnPoint {
  return { x: Math.round(10 * x) / 10 || 0, y: Math.round(10 * y) / 10 || 0 };
}

/** The arrow's head, and the spot beyond it. */
function arrowEnd([from, to]: readonly [DrawnPoint, DrawnPoint]): {
  readonly head: DrawnLine;
  readonly beyond: DrawnPoint;
} {
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  const [ux, uy] = [(to.x - from.x) / length, (to.y - from.y) / length];
  const at = (along: number, across: number): DrawnPoint => ({
    x: to.x + along * ux - across * uy,
    y: to.y + along * uy + across * ux,
  });
  return {
    head: { role: "plus-head", points: [at(-HEAD.length, -HEAD.half), at(0, 0), at(-HEAD.length, HEAD.half)] },
    beyond: at(BEYOND, 0),
  };
}

/**
 * A tiny drawing of what plus means for a fundamental, as its own view shows it: from the front, from behind, or, for
 * lines along the target line, from above with the target at the top.
 *
 * @param hand whose picture it is: a left-hander's is the mirror image, and an axis alone has no hand
 * @returns 80 by 60 in pixels; its title is the sign in words, its description the definition
 */
export function buildSignDrawing(words: Words, fundamental: Fundamental, hand: Hand): Drawing {
  const picture = signPicture(fundamental);
  const shape = signShape(picture);
  const { head, beyond } = arrowEnd(shape.plus);
  const drawing: Drawing = {
    title: sayPlus(words, fundamental),
    description: sayDefinition(words, fundamental),
    frame: { left: -40, right: 40, top: -1, bottom: 59 },
    scale: 1,
    lines: [...shape.lines, { role: "plus" as const, points: shape.plus }, head].map((line) => ({
      ...line,
      points: line.points.map(tenths),
    })),
    rounds: shape.rounds.map((round) => ({ ...round, at: tenths(round.at) })),
    labels: [
      {
        role: "strong",
        at: tenths({ x: beyond.x, y: beyond.y + BASELINE }),
        anchor: "middle",
        lines: [words.say("grid.plus-mark")],
      },
    ],
  };
  return hand === "left" && picture.kind !== "axis" ? mirrorDrawing(drawing) : drawing;
}
