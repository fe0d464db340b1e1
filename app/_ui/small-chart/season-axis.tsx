import type { ChartRibbon, SeasonChart } from "@/lib/report/chart-model";
import marks from "../chart-marks/chart-marks.module.css";
import { placeRibbons } from "../chart-ribbons";
import { pixel, pixelScale } from "../chart-scale";
import { PLAIN, textWidth } from "../text-width";
import { type SmallForm, smallPlot } from "./small-chart";
import styles from "./small-chart.module.css";

const MONTHS = 24;
const ROW = 26;

function Drawing(props: {
  readonly days: SeasonChart["x"];
  readonly drills: readonly ChartRibbon[];
  readonly form: SmallForm;
}) {
  const { days, drills, form } = props;
  const { width, left, right } = smallPlot(form);
  const x = pixelScale(days, left, right);
  const ribbons = placeRibbons(drills, [], x, width);
  const height = MONTHS + ribbons.rows * ROW;
  let free = Number.NEGATIVE_INFINITY;
  const months = days.ticks.filter((tick) => {
    const start = x(tick.at);
    const fits = start >= free && start + textWidth(tick.label, PLAIN) <= width;
    if (fits) free = start + textWidth(tick.label, PLAIN) + 6;
    return fits;
  });
  return (
    <svg className={styles[form]} viewBox={`0 0 ${width} ${height}`} width={width} height={height} aria-hidden="true">
      <g className={`${marks.words} ${marks.quiet}`}>
        {months.map((tick) => (
          <text key={tick.at} x={pixel(x(tick.at))} y="16">
            {tick.label}
          </text>
        ))}
      </g>
      <g className={marks.words}>
        {ribbons.places.map((ribbon) => (
          <g key={`${ribbon.x}${ribbon.row}`}>
            <rect
              className={marks.ribbon}
              x={pixel(ribbon.x)}
              y={MONTHS + ribbon.row * ROW}
              width={pixel(ribbon.width)}
              height="20"
            />
            <text x={pixel(ribbon.labelX)} y={MONTHS + ribbon.labelRow * ROW + 15} textAnchor={ribbon.anchor}>
              {ribbon.label}
            </text>
          </g>
        ))}
      </g>
    </svg>
  );
}

/** The time axis that small charts one under the other share, with the drills below; a table beside it says the same. */
export function SeasonAxis(props: { readonly days: SeasonChart["x"]; readonly drills: readonly ChartRibbon[] }) {
  return (
    <div className={styles.small}>
      <Drawing days={props.days} drills={props.drills} form="wide" />
      <Drawing days={props.days} drills={props.drills} form="middle" />
      <Drawing days={props.days} drills={props.drills} form="phone" />
    </div>
  );
}
