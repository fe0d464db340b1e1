import type { DifferencePlot } from "@/lib/report/reread-model";
import { SaveChart } from "../chart-file/save-chart";
import { pixel, pixelScale } from "../chart-scale";
import forms from "../two-forms.module.css";
import styles from "./differences.module.css";

const HEIGHT = 280;
const SIZES = { wide: 640, phone: 320 } as const;

/** The parts of one drawing and its size in pixels, for a page and for a file: a dot a pair, a line at no difference, the mean dashed, and within what 95 of 100 lie as a field. */
export function differenceDrawing(plot: DifferencePlot, form: keyof typeof SIZES) {
  const width = SIZES[form];
  const box = { left: 44, right: width - 8, top: 28, bottom: HEIGHT - 48 };
  const x = pixelScale(plot.x, box.left + 8, box.right - 8);
  const y = pixelScale(plot.y, box.bottom, box.top);
  const across = (value: number) => `M${box.left} ${pixel(y(value))}H${box.right}`;
  const ticks = [
    ...plot.y.ticks.map((tick) => `M${box.left - 6} ${pixel(y(tick.at))}h6`),
    ...plot.x.ticks.map((tick) => `M${pixel(x(tick.at))} ${box.bottom}v6`),
  ].join("");
  const parts = (
    <>
      {plot.limits === null ? null : (
        <rect
          className={styles.field}
          x={box.left}
          width={box.right - box.left}
          y={pixel(y(plot.limits[1]))}
          height={pixel(y(plot.limits[0]) - y(plot.limits[1]))}
        />
      )}
      <path className={styles.axis} d={`M${box.left} ${box.top}V${box.bottom}H${box.right}${ticks}${across(0)}`} />
      {plot.bias === null ? null : <path className={styles.bias} d={across(plot.bias.at)} />}
      {plot.dots.map((dot) => (
        <circle
          key={`${dot.x} ${dot.y}`}
          className={styles.dot}
          cx={pixel(x(dot.x))}
          cy={pixel(y(dot.y))}
          r={pixel(4 * Math.sqrt(dot.pairs))}
        />
      ))}
      <g className={styles.words}>
        <text x="0" y="14">
          {plot.yTitle}
        </text>
        {plot.y.ticks.map((tick) => (
          <text key={tick.at} x={box.left - 10} y={pixel(y(tick.at) + 5)} textAnchor="end">
            {tick.label}
          </text>
        ))}
        {plot.x.ticks.map((tick) => (
          <text key={tick.at} x={pixel(x(tick.at))} y={box.bottom + 22} textAnchor="middle">
            {tick.label}
          </text>
        ))}
        <text x={box.right} y={HEIGHT - 6} textAnchor="end">
          {plot.xTitle}
        </text>
      </g>
      {plot.bias === null ? null : (
        <text className={styles.mean} x={box.right} y="14" textAnchor="end">
          {plot.bias.label}
        </text>
      )}
    </>
  );
  return { parts, width, height: HEIGHT };
}

function Drawing({ plot, form }: { readonly plot: DifferencePlot; readonly form: keyof typeof SIZES }) {
  const { parts, width, height } = differenceDrawing(plot, form);
  return (
    <svg
      className={forms[form]}
      viewBox={`0 0 ${width} ${height}`}
      width={width}
      height={height}
      role="img"
      aria-label={plot.sentence}
    >
      {parts}
    </svg>
  );
}

/** The same plot for a page and for a phone; the words beside it say what it shows. */
export function Differences({ plot }: { readonly plot: DifferencePlot }) {
  return (
    <div className={forms.plot}>
      <p className={styles.text}>{plot.sentence}</p>
      <Drawing plot={plot} form="wide" />
      <Drawing plot={plot} form="phone" />
      <SaveChart files={plot.files} />
    </div>
  );
}
