import type { SeasonChart } from "@/lib/report/chart-model";
import type { ChartGeometry } from "../chart-geometry";
import { pixel } from "../chart-scale";
import { PLAIN, wrapText } from "../text-width";
import styles from "./chart-marks.module.css";

const LINE = 18;
const DROP = 5;

/** Words for both edges of the band now in force, kept apart, with the band's name between them where there is room. */
export function BandWords({ chart, geometry }: { readonly chart: SeasonChart; readonly geometry: ChartGeometry }) {
  const band = chart.bands.at(-1);
  if (band === undefined) return null;
  const { plot, y, width, form } = geometry;
  const at = plot.right + (form === "phone" ? 6 : 10);
  const highest = plot.top + 4;
  const lowest = plot.bottom + DROP;
  let high = band.high === null ? null : Math.max(highest, y(band.high) + DROP);
  let low = band.low === null ? null : Math.min(lowest, y(band.low) + DROP);
  if (high !== null && low !== null && low - high < LINE) {
    const middle = (high + low) / 2;
    high = middle - LINE / 2;
    low = middle + LINE / 2;
  }
  const name = form === "phone" ? [] : wrapText(chart.bandLabel, width - at, PLAIN);
  const from = high ?? plot.top;
  const to = low ?? plot.bottom;
  const room = to - from >= (name.length + 1) * LINE;
  const middle = (from + to) / 2 - ((name.length - 1) * LINE) / 2;
  const nameTop = room ? middle : to + LINE + 2;
  return (
    <g className={`${styles.words} ${styles.bandWord}`}>
      {high === null || band.highLabel === null ? null : (
        <text className={styles.strong} x={pixel(at)} y={pixel(high)}>
          {band.highLabel}
        </text>
      )}
      {low === null || band.lowLabel === null ? null : (
        <text className={styles.strong} x={pixel(at)} y={pixel(low)}>
          {band.lowLabel}
        </text>
      )}
      {name.map((line, index) => (
        <text key={line} x={pixel(at)} y={pixel(nameTop + index * LINE)}>
          {line}
        </text>
      ))}
    </g>
  );
}

/** The edges of bands that held earlier, at the start of their stretch and outside their field. */
export function EarlierBandWords({
  chart,
  geometry,
}: {
  readonly chart: SeasonChart;
  readonly geometry: ChartGeometry;
}) {
  const { x, y } = geometry;
  return chart.bands.slice(0, -1).map((band) => (
    <g key={band.from} className={`${styles.words} ${styles.bandWord} ${styles.halo}`}>
      {band.high === null || band.highLabel === null ? null : (
        <text x={pixel(x(band.from) + 6)} y={pixel(y(band.high) - 6)}>
          {band.highLabel}
        </text>
      )}
      {band.low === null || band.lowLabel === null ? null : (
        <text x={pixel(x(band.from) + 6)} y={pixel(y(band.low) + 17)}>
          {band.lowLabel}
        </text>
      )}
    </g>
  ));
}
