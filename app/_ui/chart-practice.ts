import type { ChartPractice } from "@/lib/report/chart-model";
import type { PixelScale } from "./chart-scale";

/** One lane of practice, in pixels. */
export interface PracticePlace {
  readonly label: string;
  readonly labelX: number;
  readonly labelY: number;
  readonly baseline: number;
  readonly left: number;
  readonly right: number;
  readonly bars: readonly {
    readonly x: number;
    readonly y: number;
    readonly width: number;
    readonly height: number;
    readonly label: string;
  }[];
}

/** Room above the words, the words, and the highest bar. */
const PAD = 8;
const WORDS = 18;
const TALLEST = 26;
const LANE = PAD + WORDS + TALLEST;
/** So that two weeks are two bars. */
const GAP = 1;

/** Sets lanes of practice one under the other, words above bars; a bar too low to be seen is a pixel high. */
export function placePractice(
  practice: ChartPractice | null | undefined,
  x: PixelScale,
  box: { readonly left: number; readonly right: number; readonly top: number },
): { readonly lanes: readonly PracticePlace[]; readonly height: number } {
  const lanes = (practice?.lanes ?? []).map((lane, place): PracticePlace => {
    const top = box.top + place * LANE;
    const baseline = top + LANE;
    return {
      label: lane.label,
      labelX: box.left,
      labelY: top + PAD + WORDS - 5,
      baseline,
      left: box.left,
      right: box.right,
      bars: lane.bars.map((bar) => {
        const [from, to] = [Math.max(box.left, x(bar.from)), Math.min(box.right, x(bar.to))];
        const height = Math.max(1, bar.share * TALLEST);
        return { x: from, y: baseline - height, width: Math.max(1, to - from - GAP), height, label: bar.label };
      }),
    };
  });
  return { lanes, height: lanes.length * LANE + (lanes.length > 0 ? 2 : 0) };
}
