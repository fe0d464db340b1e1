import type { DrawnInterval } from "@/lib/report/clubs-beside-model";
import { pixel, pixelScale } from "../chart-scale";
import styles from "./fundamental.module.css";

const WIDTH = 260;
const HEIGHT = 36;
const MIDDLE = HEIGHT / 2;

/** One level as a bar with end stops, against the goal band. */
export function IntervalMark({ interval }: { readonly interval: DrawnInterval }) {
  const x = pixelScale(interval, 6, WIDTH - 6);
  const left = interval.bandLow === null ? 0 : pixel(x(interval.bandLow));
  const right = interval.bandHigh === null ? WIDTH : pixel(x(interval.bandHigh));
  const edges = [
    interval.bandLow === null ? "" : `M${left} 2V${HEIGHT - 2}`,
    interval.bandHigh === null ? "" : `M${right} 2V${HEIGHT - 2}`,
  ].join("");
  const low = pixel(x(interval.low));
  const high = pixel(x(interval.high));
  return (
    <svg width={WIDTH} height={HEIGHT} viewBox={`0 0 ${WIDTH} ${HEIGHT}`} role="img" aria-label={interval.sentence}>
      {edges === "" ? null : (
        <rect className={styles.band} x={left} y="2" width={Math.max(0, right - left)} height={HEIGHT - 4} />
      )}
      <path className={styles.edge} d={edges} />
      <path
        className={styles.interval}
        d={`M${low} ${MIDDLE}H${high}M${low} ${MIDDLE - 5}v10M${high} ${MIDDLE - 5}v10`}
      />
      <circle className={styles.middle} cx={pixel(x(interval.value))} cy={MIDDLE} r="4.5" />
    </svg>
  );
}
