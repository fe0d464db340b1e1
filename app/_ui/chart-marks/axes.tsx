import type { SeasonChart, Tick } from "@/lib/report/chart-model";
import type { ChartGeometry } from "../chart-geometry";
import { pixel } from "../chart-scale";
import { PLAIN, textWidth } from "../text-width";
import styles from "./chart-marks.module.css";

/** Pixels under the top of a plot in which a tick's label reaches up to the unit. */
const TICK_ROOM = 8;

/** Which labels of the time axis stand free of the one before; the others keep only their tick. */
function freeTicks(ticks: readonly Tick[], x: (day: number) => number, width: number): readonly Tick[] {
  let end = Number.NEGATIVE_INFINITY;
  return ticks.filter((tick) => {
    const start = x(tick.at);
    const stop = start + textWidth(tick.label, PLAIN);
    if (start < end + 6 || stop > width) return false;
    end = stop;
    return true;
  });
}

/** Both axes with their ticks and words. */
export function Axes({ chart, geometry }: { readonly chart: SeasonChart; readonly geometry: ChartGeometry }) {
  const { plot, x, y, width } = geometry;
  const left = pixel(plot.left);
  const bottom = pixel(plot.bottom);
  const values = chart.y.ticks.map((tick) => `M${left - 6} ${pixel(y(tick.at))}h6`).join("");
  // A tick at the very top has its label where the unit stands elsewhere.
  const top = chart.y.ticks.some((tick) => y(tick.at) - plot.top < TICK_ROOM) ? 20 : 6;
  const days = chart.x.ticks.map((tick) => `M${pixel(x(tick.at))} ${bottom}v6`).join("");
  return (
    <g className={`${styles.words} ${styles.quiet}`}>
      <path className={styles.axis} d={`M${left} ${pixel(plot.top)}V${bottom}H${pixel(plot.right)}${values}${days}`} />
      <text x="0" y={pixel(plot.top - top)}>
        {chart.unitLabel}
      </text>
      {chart.y.ticks.map((tick) => (
        <text key={tick.at} x={left - 10} y={pixel(y(tick.at) + 5)} textAnchor="end">
          {tick.label}
        </text>
      ))}
      {freeTicks(chart.x.ticks, x, width).map((tick) => (
        <text key={tick.at} x={pixel(x(tick.at))} y={bottom + 22}>
          {tick.label}
        </text>
      ))}
    </g>
  );
}
