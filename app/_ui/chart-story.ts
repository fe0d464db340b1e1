import type { ChartChange, ChartLevel, SeasonChart } from "@/lib/report/chart-model";
import type { FormSize } from "./chart-forms";
import { placeInLane } from "./chart-lane";
import type { PixelScale } from "./chart-scale";
import { type Lettering, PLAIN, STRONG, textWidth } from "./text-width";

/** One caption of the lane above the plot. */
export interface StoryWords {
  readonly x: number;
  readonly y: number;
  readonly anchor: "start" | "middle";
  readonly first: string;
  readonly second: string;
  readonly kind: "level" | ChartChange["direction"];
}

const VALUE: Lettering = { size: 16, weight: "strong" };
const ROW = 44;
const GAP = 14;

function levelItem(level: ChartLevel, label: string, x: PixelScale) {
  const width = Math.max(textWidth(level.label, VALUE), textWidth(label, PLAIN));
  const ideal = (x(level.from) + x(level.to) - width) / 2;
  return { ideal, latest: Math.max(ideal, x(level.to) - width / 2), width, at: level.from };
}

function changeItem(change: ChartChange, x: PixelScale) {
  const width = Math.max(textWidth(change.label, STRONG), textWidth(change.daysLabel, PLAIN));
  const ideal = x(change.from);
  return { ideal, latest: Math.max(ideal, x(change.to)), width, at: change.from };
}

/** Sets the story above the plot, level and change in the order of days; where one lane is too short, changes stand over levels. */
export function placeStory(
  chart: Pick<SeasonChart, "levels" | "changes" | "levelLabel">,
  size: Pick<FormSize, "lane" | "width">,
  x: PixelScale,
): { readonly words: readonly StoryWords[]; readonly height: number } {
  const label = size.lane === "one" ? (chart.levelLabel ?? "") : "";
  const levels = chart.levels.map((level) => ({ item: levelItem(level, label, x), level, change: null }));
  const changes = chart.changes.map((change) => ({ item: changeItem(change, x), level: null, change }));
  const lanes = size.lane === "one" ? [[...levels, ...changes]] : [changes, levels];
  const words: StoryWords[] = [];
  let top = 0;
  lanes.forEach((lane, index) => {
    const row = size.lane === "two" && index === 1 ? 24 : ROW;
    const sorted = [...lane].sort((a, b) => a.item.at - b.item.at || (a.level === null ? 1 : -1));
    const placed = placeInLane(
      sorted.map(({ item }) => item),
      0,
      size.width,
      GAP,
    );
    sorted.forEach(({ item, level, change }, order) => {
      const place = placed.places[order];
      if (place === undefined) return;
      const y = top + place.row * row;
      if (level !== null) {
        const middle = place.start + item.width / 2;
        words.push({ x: middle, y, anchor: "middle", first: label, second: level.label, kind: "level" });
      } else {
        const { label: first, daysLabel: second, direction } = change;
        words.push({ x: place.start, y, anchor: "start", first, second, kind: direction });
      }
    });
    top += placed.rows * row;
  });
  return { words, height: top };
}
