import type { ShareStrip } from "@/lib/report/page-model";
import { pixel, pixelScale } from "../chart-scale";
import styles from "./contact.module.css";

const WIDTH = 300;
const HEIGHT = 52;
const MIDDLE = 16;
const AXIS = 32;
const ANCHORS = ["start", "middle", "end"] as const;

/** A share between 0 and 100: its 95 of 100 with end stops, its 80 of 100 as a thicker bar, its middle as a dot. */
export function ShareMark({ strip }: { readonly strip: ShareStrip }) {
  const x = pixelScale({ from: 0, to: 100 }, 6, WIDTH - 6);
  const at = (value: number) => pixel(x(value));
  const stops = [strip.low95, strip.high95].map((end) => `M${at(end)} ${MIDDLE - 6}v12`).join("");
  return (
    <svg
      className={styles.strip}
      width={WIDTH}
      height={HEIGHT}
      viewBox={`0 0 ${WIDTH} ${HEIGHT}`}
      role="img"
      aria-label={strip.sentence}
    >
      <path
        className={styles.axis}
        d={`M${at(0)} ${AXIS}H${at(100)}${strip.ticks.map((tick) => `M${at(tick.at)} ${AXIS}v-5`).join("")}`}
      />
      <path className={styles.whole} d={`M${at(strip.low95)} ${MIDDLE}H${at(strip.high95)}${stops}`} />
      <path className={styles.likely} d={`M${at(strip.low80)} ${MIDDLE}H${at(strip.high80)}`} />
      <circle className={styles.middle} cx={at(strip.value)} cy={MIDDLE} r="5" />
      {strip.ticks.map((tick, place) => (
        <text key={tick.at} className={styles.tick} x={at(tick.at)} y={HEIGHT - 3} textAnchor={ANCHORS[place]}>
          {tick.label}
        </text>
      ))}
    </svg>
  );
}
