import type { SignPicture } from "@/lib/domain/sign-picture";
import type { DrawnLine, DrawnPoint, DrawnRound, LineRole } from "./drawing-model";

/** Lines and rounds of a tiny drawing, and the arrow of plus from its tail to its head. */
export interface SignShape {
  readonly lines: readonly DrawnLine[];
  readonly rounds: readonly DrawnRound[];
  readonly plus: readonly [DrawnPoint, DrawnPoint];
}

type At = readonly [number, number];

function line(role: LineRole, ...points: readonly At[]): DrawnLine {
  return { role, points: points.map(([x, y]) => ({ x, y })) };
}

function round(role: DrawnRound["role"], [x, y]: At, radius: number): DrawnRound {
  return { role, at: { x, y }, radius };
}

function arrow([x0, y0]: At, [x1, y1]: At): SignShape["plus"] {
  return [
    { x: x0, y: y0 },
    { x: x1, y: y1 },
  ];
}

const GROUND = line("ground", [-24, 54], [24, 54]);
const FEET: readonly [At, At] = [
  [-10, 54],
  [10, 54],
];
/** Degrees from the plumb line; a bend is larger than a tilt, as golfers stand. */
const TILT = 22;
const BEND = 36;

/** A point this far from a pivot, turned this many degrees from straight up; + to the right. */
function turned([x, y]: At, length: number, degrees: number): At {
  const angle = (degrees * Math.PI) / 180;
  return [x + length * Math.sin(angle), y - length * Math.cos(angle)];
}

function spine(side: 1 | -1, degrees: number, legs: readonly DrawnLine[]): SignShape {
  const hips: At = [0, 34];
  const neck = turned(hips, 20, side * degrees);
  const head = turned(hips, 26, side * degrees);
  return {
    lines: [GROUND, ...legs, line("sight", hips, [0, 3]), line("told", hips, neck)],
    rounds: [round("head", head, 5)],
    plus: arrow([head[0] + 8 * side, head[1]], [head[0] + 16 * side, head[1]]),
  };
}

function shaft(): SignShape {
  return {
    lines: [
      GROUND,
      line("sight", [0, 50], [0, 6]),
      line("limb", [3, 4], [13, 20], [-7, 6]),
      line("told", [0, 50], [13, 20]),
    ],
    rounds: [round("ball", [0, 51], 2.5)],
    plus: arrow([17, 20], [27, 20]),
  };
}

function lean({ of, plus }: Extract<SignPicture, { kind: "lean" }>): SignShape {
  if (of === "shaft") return shaft();
  if (plus === "ball") return spine(1, BEND, [line("limb", [0, 34], [6, 44], [0, 54], [7, 54])]);
  return spine(plus === "away" ? -1 : 1, TILT, [line("limb", FEET[0], [0, 34], FEET[1])]);
}

/** From above, the target at the top: what lies out lies on the right. */
const TARGET_LINE: readonly DrawnLine[] = [
  line("aim", [30, 54], [30, 8]),
  line("aim-head", [27.5, 9], [30, 3], [32.5, 9]),
];

const TURNS: Readonly<Record<"feet" | "shoulders" | "shaft", SignShape>> = {
  feet: {
    lines: [
      ...TARGET_LINE,
      line("sight", [-8, 52], [-8, 4]),
      line("foot", [-20, 44], [-10, 44]),
      line("foot", [-10, 14], [0, 14]),
      line("told", [-10.7, 52], [5.3, 4]),
    ],
    rounds: [],
    plus: arrow([8, 13], [18, 13]),
  },
  shoulders: {
    lines: [...TARGET_LINE, line("sight", [-8, 52], [-8, 4]), line("told", [-8, 46], [3, 13])],
    rounds: [round("head", [2, 29], 6)],
    plus: arrow([8, 13], [18, 13]),
  },
  shaft: {
    lines: [
      ...TARGET_LINE,
      line("limb", [-24, 4], [-2, 13], [-24, 24]),
      line("sight", [-2, 13], [-2, 54]),
      line("told", [-2, 13], [8, 46]),
    ],
    rounds: [round("told", [8.6, 48], 3)],
    plus: arrow([13, 40], [23, 40]),
  },
};

const MOVES: Readonly<Record<"hips" | "head", SignShape>> = {
  hips: {
    lines: [
      GROUND,
      line("sight", [0, 54], [0, 3]),
      line("limb", FEET[0], [-8, 34], FEET[1]),
      line("limb", [-8, 34], [-2, 15]),
    ],
    rounds: [round("head", [-1, 9], 5), round("told", [-8, 34], 4)],
    plus: arrow([-15, 34], [-25, 34]),
  },
  head: {
    lines: [
      GROUND,
      line("sight", [0, 54], [0, 3]),
      line("limb", FEET[0], [0, 34], FEET[1]),
      line("limb", [0, 34], [-7, 16]),
    ],
    rounds: [round("told", [-8, 10], 5)],
    plus: arrow([-16, 10], [-26, 10]),
  },
};

const AIM: SignShape = {
  lines: [
    line("limb", [-17, 25], [0, 48], [17, 23]),
    line("limb", [-17, 25], [17, 23]),
    line("told", [0, 48], [-11, 25]),
  ],
  rounds: [round("head", [0, 11], 7)],
  plus: arrow([-1, 25], [-25, 25]),
};

const HEELS: SignShape = {
  lines: [
    GROUND,
    line("limb", [-20, 54], [-7, 6]),
    line("limb", [20, 54], [7, 6]),
    line("sight", [-20, 54], [-20, 36]),
    line("sight", [20, 54], [20, 36]),
  ],
  rounds: [round("told", [3, 50], 4)],
  plus: arrow([-16, 40], [14, 40]),
};

const WRIST: At = [-4, 38];

const HINGE: SignShape = {
  lines: [
    line("limb", [26, 38], WRIST),
    line("sight", WRIST, [-30, 38]),
    line("told", WRIST, turned(WRIST, 32, 5)),
    line("plus", ...[-90, -72, -54, -36, -18].map((degrees) => turned(WRIST, 17, degrees))),
  ],
  rounds: [round("head", [26, 25], 5)],
  plus: arrow(turned(WRIST, 17, -18), turned(WRIST, 17, -3)),
};

const AXIS: SignShape = {
  lines: [line("ground", [-28, 30], [28, 30]), line("limb", [0, 24], [0, 36])],
  rounds: [],
  plus: arrow([0, 30], [22, 30]),
};

/** The shape of a sign's picture for a right-hander in a frame of 80 by 60 about x = 0, y down. */
export function signShape(picture: SignPicture): SignShape {
  switch (picture.kind) {
    case "lean":
      return lean(picture);
    case "turn":
      return TURNS[picture.of];
    case "move":
      return MOVES[picture.of];
    case "aim":
      return AIM;
    case "heels":
      return HEELS;
    case "hinge":
      return HINGE;
    case "axis":
      return AXIS;
  }
}
