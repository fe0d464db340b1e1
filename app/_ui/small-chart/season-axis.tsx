import type { ChartPractice, ChartRibbon, SeasonChart } from "@/lib/report/chart-model";
import marks from "../chart-marks/chart-marks.module.css";
import { PracticeLanes } from "../chart-marks/practice-lanes";
import { Ribbons } from "../chart-marks/story-lane";
import { placePractice } from "../chart-practice";
import { placeRibbons } from "../chart-ribbons";
import { pixel, pixelScale } from "../chart-scale";
import { PLAIN, textWidth } from "../text-width";
import { type SmallForm, smallPlot } from "./small-chart";
import styles from "./small-chart.module.css";

/** What stands under the axis. */
export interface AxisUnder {
  readonly drills: readonly ChartRibbon[];
  readonly events: readonly ChartRibbon[];
  readonly practice: ChartPractice | null;
}

const MONTHS = 24;
const ROW = 26;

/** The parts of one drawing and its size in pixels, for a page and for a file. */
export function axisDrawing(days: SeasonChart["x"], under: AxisUnder, form: SmallForm) {
  const { width, left, right } = smallPlot(form);
  const x = pixelScale(days, left, right);
  const ribbons = placeRibbons(under.drills, under.events, x, width);
  const beneath = MONTHS + ribbons.rows * ROW;
  const practice = placePractice(under.practice, x, { left, right, top: beneath });
  const height = beneath + practice.height;
  let free = Number.NEGATIVE_INFINITY;
  const months = days.ticks.filter((tick) => {
    const start = x(tick.at);
    const fits = start >= free && start + textWidth(tick.label, PLAIN) <= width;
    if (fits) free = start + textWidth(tick.label, PLAIN) + 6;
    return fits;
  });
  const parts = (
    <>
      <g className={`${marks.words} ${marks.quiet}`}>
        {months.map((tick) => (
          <text key={tick.at} x={pixel(x(tick.at))} y="16">
            {tick.label}
          </text>
        ))}
      </g>
      <Ribbons ribbons={ribbons.places} top={MONTHS} />
      <PracticeLanes lanes={practice.lanes} />
    </>
  );
  return { parts, width, height };
}

function Drawing(props: { readonly days: SeasonChart["x"]; readonly under: AxisUnder; readonly form: SmallForm }) {
  const { parts, width, height } = axisDrawing(props.days, props.under, props.form);
  return (
    <svg
      className={styles[props.form]}
      viewBox={`0 0 ${width} ${height}`}
      width={width}
      height={height}
      aria-hidden="true"
    >
      {parts}
    </svg>
  );
}

/** The time axis that small charts one under the other share, with drills, events and practice below; tables and words beside it say the same. */
export function SeasonAxis(props: { readonly days: SeasonChart["x"]; readonly under?: AxisUnder }) {
  const under = props.under ?? { drills: [], events: [], practice: null };
  return (
    <div className={styles.small}>
      <Drawing days={props.days} under={under} form="wide" />
      <Drawing days={props.days} under={under} form="middle" />
      <Drawing days={props.days} under={under} form="phone" />
    </div>
  );
}
