import type { Drawing, DrawnPoint } from "./drawing-model";

const ANCHORS = { start: "end", middle: "middle", end: "start" } as const;

/** -0 is no place of its own. */
function turned({ x, y }: DrawnPoint): DrawnPoint {
  return { x: x === 0 ? 0 : -x, y };
}

/** The mirror image of a drawing about x = 0: what stood on the right stands on the left; words stay readable. */
export function mirrorDrawing(drawing: Drawing): Drawing {
  const { frame } = drawing;
  return {
    ...drawing,
    frame: { ...frame, left: -frame.right, right: -frame.left },
    lines: drawing.lines.map((line) => ({ ...line, points: line.points.map(turned) })),
    rounds: drawing.rounds.map((round) => ({ ...round, at: turned(round.at) })),
    labels: drawing.labels.map((label) => ({ ...label, at: turned(label.at), anchor: ANCHORS[label.anchor] })),
  };
}
