import type { ChartChange } from "@/lib/report/chart-model";
import { type PixelScale, type PlotBox, pixel } from "../chart-scale";
import styles from "./chart-marks.module.css";

/** A wedge: its point on the old level, its base as tall as the new level's interval. */
export function wedgePath(change: ChartChange, x: PixelScale, y: PixelScale): string {
  const end = pixel(x(change.to));
  return `M${pixel(x(change.from))} ${pixel(y(change.before))}L${end} ${pixel(y(change.afterHigh))}V${pixel(y(change.afterLow))}Z`;
}

/** The days in which a change happened, and the wedge that says which way. */
export function ChangeMarks({
  changes,
  hatches,
  plot,
  x,
  y,
}: {
  readonly changes: readonly ChartChange[];
  readonly hatches: string;
  readonly plot: PlotBox;
  readonly x: PixelScale;
  readonly y: PixelScale;
}) {
  const top = pixel(plot.top);
  const bottom = pixel(plot.bottom);
  return changes.map((change) => {
    const from = pixel(x(change.from));
    const to = pixel(x(change.to));
    return (
      <g key={change.from} className={styles[change.direction]}>
        <rect
          x={from}
          y={top}
          width={pixel(to - from)}
          height={pixel(bottom - top)}
          stroke="none"
          fill={`url(#${hatches}-${change.direction})`}
        />
        <path className={styles.side} d={`M${from} ${top}V${bottom}M${to} ${top}V${bottom}`} />
        <path className={styles.wedge} d={wedgePath(change, x, y)} />
      </g>
    );
  });
}
