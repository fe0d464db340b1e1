import type { FamilyPicture } from "@/lib/report/family-look-model";
import type { FormSize } from "./chart-forms";
import { type PixelScale, type PlotBox, pixelScale } from "./chart-scale";
import { placeStory, type StoryWords } from "./chart-story";
import { PLAIN, STRONG, textWidth } from "./text-width";

/** The widths in which a family's picture is drawn. */
export type FamilyForm = "phone" | "wide";

const SIZES = {
  phone: { width: 342, plotHeight: 268, lane: "two", dot: 5.5 },
  wide: { width: 600, plotHeight: 320, lane: "two", dot: 6 },
} as const;

/** Room over and under the plot for what its ends mean, and under that for the months. */
const END = 24;
const MONTHS = 24;

/** Everything that a family's picture needs to know in pixels. */
export interface FamilyGeometry {
  readonly width: number;
  readonly height: number;
  readonly dot: number;
  readonly size: Pick<FormSize, "lane">;
  readonly plot: PlotBox;
  readonly x: PixelScale;
  readonly y: PixelScale;
  readonly story: readonly StoryWords[];
  /** Lines of the words for high up, low down, and the months. */
  readonly high: number;
  readonly low: number;
  readonly months: number;
}

/** Lays a family's picture out in one of its widths. */
export function familyGeometry(picture: FamilyPicture, form: FamilyForm): FamilyGeometry {
  const size = SIZES[form];
  const margin = picture.inside === "" ? 8 : textWidth(picture.inside, STRONG) + 12;
  const [left, right] = [8, size.width - margin];
  const x = pixelScale(picture.x, left, right);
  // A level that nothing came before or after needs no word of when.
  const { changes, levels } = picture;
  const story = placeStory({ changes, levels: changes.length === 0 ? [] : levels }, size, x);
  const top = story.height + (story.height > 0 ? 8 : 0) + END;
  const plot: PlotBox = { left, right, top, bottom: top + size.plotHeight };
  return {
    ...{ width: size.width, dot: size.dot, size, plot, x, story: story.words },
    y: pixelScale({ from: picture.y.low, to: picture.y.high }, plot.bottom - 8, plot.top + 8),
    high: top - 8,
    low: plot.bottom + 17,
    months: plot.bottom + END + 17,
    height: plot.bottom + END + MONTHS,
  };
}

/** The months whose words stand free of the one before and inside the drawing. */
export function familyMonthTicks(picture: FamilyPicture, { x, width }: FamilyGeometry) {
  let end = Number.NEGATIVE_INFINITY;
  return picture.x.ticks.filter((tick) => {
    const [start, wide] = [x(tick.at), textWidth(tick.label, PLAIN)];
    if (start < end + 8 || start + wide > width) return false;
    end = start + wide;
    return true;
  });
}
