import type { FundamentalPage } from "@/lib/report/page-model";
import { pixel, pixelScale } from "../chart-scale";
import styles from "./fundamental.module.css";

type Intervals = NonNullable<NonNullable<FundamentalPage["beforeAfter"]>["intervals"]>;

const WIDTH = 260;
const HEIGHT = 36;
const MIDDLE = HEIGHT / 2;

/** One level as a bar with end stops, against the goal band. */
export function IntervalMark({
  intervals,
  row,
}: {
  readonly intervals: Intervals;
  readonly row: Intervals["rows"][number];
}) {
  const x = pixelScale(intervals, 6, WIDTH - 6);
  const left = intervals.bandLow === null ? 0 : pixel(x(intervals.bandLow));
  const right = intervals.bandHigh === null ? WIDTH : pixel(x(intervals.bandHigh));
  const edges = [
    intervals.bandLow === null ? "" : `M${left} 2V${HEIGHT - 2}`,
    intervals.bandHigh === null ? "" : `M${right} 2V${HEIGHT - 2}`,
  ].join("");
  const low = pixel(x(row.low));
  const high = pixel(x(row.high));
  return (
    <svg width={WIDTH} height={HEIGHT} viewBox={`0 0 ${WIDTH} ${HEIGHT}`} role="img" aria-label={row.sentence}>
      {edges === "" ? null : (
        <rect className={styles.band} x={left} y="2" width={Math.max(0, right - left)} height={HEIGHT - 4} />
      )}
      <path className={styles.edge} d={edges} />
      <path
        className={styles.interval}
        d={`M${low} ${MIDDLE}H${high}M${low} ${MIDDLE - 5}v10M${high} ${MIDDLE - 5}v10`}
      />
      <circle className={styles.middle} cx={pixel(x(row.value))} cy={MIDDLE} r="4.5" />
    </svg>
  );
}
