import type { SeasonsChart as Model } from "@/lib/report/drill-seasons-model";
import { pixel, pixelScale } from "../chart-scale";
import forms from "../two-forms.module.css";
import styles from "./seasons-chart.module.css";

/** Pixels of either form. */
const SIZES = { wide: { width: 640, height: 300 }, phone: { width: 340, height: 260 } } as const;
const LEFT = 44;
const TOP = 26;
const BOTTOM = 28;

function Drawing({ chart, form }: { readonly chart: Model; readonly form: keyof typeof SIZES }) {
  const { width, height } = SIZES[form];
  const x = pixelScale({ from: chart.from, to: chart.to }, LEFT, width - 8);
  const y = pixelScale({ from: chart.low, to: chart.high }, height - BOTTOM, TOP);
  const path = (dots: Model["lines"][number]["dots"]): string =>
    dots.map(({ at, value }, place) => `${place === 0 ? "M" : "L"}${pixel(x(at))} ${pixel(y(value))}`).join("");
  const top = y(chart.band?.high ?? chart.high);
  const foot = y(chart.band?.low ?? chart.low);
  return (
    <svg
      className={forms[form]}
      viewBox={`0 0 ${width} ${height}`}
      width={width}
      height={height}
      role="img"
      aria-label={chart.sentence}
    >
      {chart.band === null ? null : (
        <rect className={styles.band} x={LEFT} y={pixel(top)} width={width - 8 - LEFT} height={pixel(foot - top)} />
      )}
      <path className={styles.begins} d={`M${pixel(x(0))} ${TOP}V${height - BOTTOM}`} />
      {chart.lines.map(({ id, dots }) => (
        <path key={id} className={styles.before} d={path(dots.filter(({ at }) => at <= 0))} />
      ))}
      {chart.lines.map(({ id, dots }) => (
        <path key={id} className={styles.after} d={path(dots.filter(({ at }) => at > 0))} />
      ))}
      {chart.lines.flatMap(({ id, dots }) =>
        dots.map(({ at, value }) => (
          <circle
            key={`${id} ${at}`}
            className={at > 0 ? styles.new : styles.old}
            cx={pixel(x(at))}
            cy={pixel(y(value))}
            r="2.5"
          />
        )),
      )}
      <g className={styles.words}>
        {chart.ticks.map(({ at, label }) => (
          <text key={label} x={LEFT - 8} y={pixel(y(at) + 5)} textAnchor="end">
            {label}
          </text>
        ))}
        {chart.weeks
          .filter((_, place) => form === "wide" || place % 2 === 0)
          .map(({ at, label }) => (
            <text key={label} x={pixel(x(at))} y={height - 8} textAnchor="middle">
              {label}
            </text>
          ))}
        <text x={pixel(x(0))} y={TOP - 8} textAnchor="middle">
          {chart.begins}
        </text>
      </g>
    </svg>
  );
}

/** Seasons moved to one first day: what came before it pale, what came after it dark. */
export function SeasonsChart({ chart }: { readonly chart: Model }) {
  return (
    <div className={forms.plot}>
      <Drawing chart={chart} form="wide" />
      <Drawing chart={chart} form="phone" />
    </div>
  );
}
