import { PLAIN, textWidth, wrapText } from "./text-width";

/** A rectangle in pixels. */
export interface Area {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** A reason beside its session's mark. */
export interface ReasonWords {
  readonly x: number;
  readonly y: number;
  readonly anchor: "start" | "end" | "middle";
  readonly lines: readonly string[];
}

const LINE = 19;
const WIDTH = 176;
const OFF = 16;

function touches(a: Area, b: Area): boolean {
  return a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;
}

/** Finds room beside each set-aside session: left, right, above or below, wherever it covers no mark. Without room the words are left to the table. */
export function placeReasons(
  wanted: readonly {
    readonly x: number;
    readonly y: number;
    readonly low: number;
    readonly high: number;
    readonly text: string;
  }[],
  marks: readonly Area[],
  plot: Area,
): readonly ReasonWords[] {
  const taken: Area[] = [...marks];
  const placed: ReasonWords[] = [];
  for (const { x, y, low, high, text } of wanted) {
    const lines = wrapText(text, WIDTH, PLAIN);
    if (lines.length === 0) continue;
    const width = Math.max(...lines.map((line) => textWidth(line, PLAIN)));
    const height = lines.length * LINE;
    const middle = y - height / 2;
    const beside = [middle, middle - height / 2, middle + height / 2];
    const tries: readonly { readonly left: number; readonly top: number; readonly anchor: ReasonWords["anchor"] }[] = [
      ...beside.map((top) => ({ left: x - OFF - width, top, anchor: "end" as const })),
      ...beside.map((top) => ({ left: x + OFF, top, anchor: "start" as const })),
      { left: x - width / 2, top: high - 8 - height, anchor: "middle" },
      { left: x - width / 2, top: low + 8, anchor: "middle" },
      { left: x - 4 - width, top: high - 8 - height, anchor: "end" },
      { left: x + 4, top: high - 8 - height, anchor: "start" },
    ];
    const free = tries.find(({ left, top }) => {
      const area: Area = { left, right: left + width, top, bottom: top + height };
      const inside =
        area.left >= plot.left && area.right <= plot.right && area.top >= plot.top && area.bottom <= plot.bottom;
      return inside && !taken.some((other) => touches(area, other));
    });
    if (free === undefined) continue;
    taken.push({ left: free.left - 4, right: free.left + width + 4, top: free.top, bottom: free.top + height });
    const at = { start: free.left, end: free.left + width, middle: free.left + width / 2 }[free.anchor];
    placed.push({ x: at, y: free.top + 14, anchor: free.anchor, lines });
  }
  return placed;
}
