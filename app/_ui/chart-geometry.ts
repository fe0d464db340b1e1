import type { ChartBand, SeasonChart } from "@/lib/report/chart-model";
import { type ChartForm, FORM_SIZES, type FormSize, type PaperForm } from "./chart-forms";
import { type PracticePlace, placePractice } from "./chart-practice";
import { placeReasons, type ReasonWords } from "./chart-reasons";
import { placeRibbons, type RibbonPlace } from "./chart-ribbons";
import { type PixelScale, type PlotBox, pixelScale } from "./chart-scale";
import { placeStory, type StoryWords } from "./chart-story";
import { PLAIN, STRONG, textWidth } from "./text-width";

/** Everything a season chart's drawing needs to know in pixels; the still and the live drawing share it. */
export interface ChartGeometry {
  readonly form: ChartForm | PaperForm;
  readonly size: FormSize;
  readonly width: number;
  readonly height: number;
  readonly plot: PlotBox;
  readonly x: PixelScale;
  readonly y: PixelScale;
  readonly story: readonly StoryWords[];
  readonly ribbons: readonly RibbonPlace[];
  readonly practice: readonly PracticePlace[];
  readonly reasons: readonly ReasonWords[];
}

const AXIS = 32;
const RIBBON = 26;

function widest(words: readonly (string | null)[]): number {
  return Math.max(0, ...words.map((word) => textWidth(word ?? "", STRONG)));
}

function edgeWords(band: ChartBand | undefined): readonly (string | null)[] {
  return band === undefined ? [] : [band.lowLabel, band.highLabel];
}

/** Lays a season chart out in one of its widths. */
export function chartGeometry(chart: SeasonChart, form: ChartForm | PaperForm): ChartGeometry {
  const size = FORM_SIZES[form];
  const phone = form === "phone";
  const scaleWords = Math.max(0, ...chart.y.ticks.map((tick) => textWidth(tick.label, PLAIN)));
  const left = Math.max(phone ? 28 : 44, scaleWords + (phone ? 12 : 18));
  const edges = widest(edgeWords(chart.bands.at(-1)));
  const margin = phone ? edges + 8 : Math.max(104, edges + 14);
  const right = size.width - Math.min(margin, size.width / 3);
  const x = pixelScale(chart.x, left, right);
  const story = placeStory(chart, size, x);
  const top = story.height + 20;
  const plot: PlotBox = { left, right, top, bottom: top + size.plotHeight };
  const y = pixelScale({ from: chart.y.low, to: chart.y.high }, plot.bottom, plot.top);
  const ribbons = placeRibbons(chart.drills, chart.events, x, size.width);
  const under = plot.bottom + AXIS + ribbons.rows * RIBBON;
  const practice = placePractice(chart.practice, x, { left, right, top: under });
  return {
    form,
    size,
    width: size.width,
    height: under + practice.height,
    plot,
    x,
    y,
    story: story.words,
    ribbons: ribbons.places,
    practice: practice.lanes,
    reasons: phone ? [] : reasonsOf(chart, size, plot, x, y),
  };
}

function reasonsOf(
  chart: SeasonChart,
  size: FormSize,
  plot: PlotBox,
  x: PixelScale,
  y: PixelScale,
): readonly ReasonWords[] {
  const bars = chart.sessions.map((session) => {
    const values = [session.low, session.high, ...session.swings].map(y);
    const at = x(session.day);
    return {
      left: at - size.tickOff - 1,
      right: at + 6,
      top: Math.min(...values) - 2,
      bottom: Math.max(...values) + 2,
    };
  });
  const lines = chart.levels.map((level) => ({
    left: x(level.from),
    right: x(level.to),
    top: y(level.value) - 3,
    bottom: y(level.value) + 3,
  }));
  const columns = chart.changes.map((change) => ({
    left: x(change.from),
    right: x(change.to),
    top: plot.top,
    bottom: plot.bottom,
  }));
  const aside = chart.sessions.filter((session) => session.mark === "set-aside" && session.reason !== "");
  const wanted = aside.map((session) => ({
    x: x(session.day),
    y: y(session.mean),
    low: Math.max(...[session.low, ...session.swings].map(y)),
    high: Math.min(...[session.high, ...session.swings].map(y)),
    text: session.reason,
  }));
  return placeReasons(wanted, [...bars, ...lines, ...columns], plot);
}
