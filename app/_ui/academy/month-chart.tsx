import type { MonthChart as Model } from "@/lib/report/academy-model";
import { pixel } from "../chart-scale";
import forms from "../two-forms.module.css";
import styles from "./month-chart.module.css";

/** Pixels: a column for each month, and as high as the highest count on its side. */
const SIZES = { wide: { width: 640, column: 28 }, phone: { width: 320, column: 14 } } as const;
const HEIGHT = 232;
const LINE = 112;
const REACH = 72;

/** A wedge that leans away from the line: its height is the count. */
function wedge(left: number, column: number, height: number): string {
  return `M${pixel(left)} ${LINE}L${pixel(left + column)} ${pixel(LINE - height)}V${LINE}Z`;
}

function Drawing({ chart, form }: { readonly chart: Model; readonly form: keyof typeof SIZES }) {
  const { width, column } = SIZES[form];
  const step = (width - 16) / Math.max(1, chart.months.length);
  const marks = chart.months.map((month, at) => {
    const left = 8 + at * step + (step - column) / 2;
    const up = (month.gains / chart.most) * REACH;
    const down = (month.slips / chart.most) * REACH;
    return { ...month, left, middle: left + column / 2, up, down };
  });
  return (
    <svg
      className={forms[form]}
      viewBox={`0 0 ${width} ${HEIGHT}`}
      width={width}
      height={HEIGHT}
      role="img"
      aria-label={chart.sentence}
    >
      {marks.map(({ label, left, middle, up, down, gains, slips }) => (
        <g key={label}>
          {gains === 0 ? null : <path className={styles.gain} d={wedge(left, column, up)} />}
          {slips === 0 ? null : <path className={styles.slip} d={wedge(left, column, -down)} />}
          <g className={styles.words} textAnchor="middle">
            {gains === 0 ? null : (
              <text x={pixel(middle)} y={pixel(LINE - up - 6)}>
                {gains}
              </text>
            )}
            {slips === 0 ? null : (
              <text x={pixel(middle)} y={pixel(LINE + down + 18)}>
                {slips}
              </text>
            )}
            <text x={pixel(middle)} y={HEIGHT - 6}>
              {label.slice(0, form === "wide" || chart.months.length < 8 ? undefined : 1)}
            </text>
          </g>
        </g>
      ))}
      <path className={styles.axis} d={`M0 ${LINE}H${width}`} />
      <g className={styles.words}>
        <text x="0" y="14">
          {chart.gains}
        </text>
        <text x="0" y={HEIGHT - 26}>
          {chart.slips}
        </text>
      </g>
    </svg>
  );
}

/** Gains above a line and slips below it, for a page and for a phone; the table beside it has the same numbers. */
export function MonthChart({ chart }: { readonly chart: Model }) {
  return (
    <div className={forms.plot}>
      <p>{chart.sentence}</p>
      <Drawing chart={chart} form="wide" />
      <Drawing chart={chart} form="phone" />
    </div>
  );
}
