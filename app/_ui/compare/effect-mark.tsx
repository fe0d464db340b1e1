import type { DrawnEffect } from "@/lib/report/compared-drills-model";
import { pixel, pixelScale } from "../chart-scale";
import styles from "./compare.module.css";

const WIDTH = 260;
const HEIGHT = 40;
const MIDDLE = HEIGHT / 2;

/** One drill's effect as a bar with end stops on the axis that all share, about the line of no effect; a cross where the plain figure lies. */
export function EffectMark({ drawn }: { readonly drawn: DrawnEffect }) {
  const x = pixelScale(drawn, 8, WIDTH - 8);
  const { effect, plain } = drawn;
  const at = plain === null ? 0 : pixel(x(plain));
  const zero = pixel(x(0));
  return (
    <svg width={WIDTH} height={HEIGHT} viewBox={`0 0 ${WIDTH} ${HEIGHT}`} role="img" aria-label={drawn.sentence}>
      <path className={styles.grid} d={drawn.ticks.map((tick) => `M${pixel(x(tick))} 0V${HEIGHT}`).join("")} />
      <path className={styles.zero} d={`M${zero} 0V${HEIGHT}`} />
      {effect === null ? null : (
        <g className={styles[drawn.look]}>
          <path
            className={styles.interval}
            d={`M${pixel(x(effect.low))} ${MIDDLE}H${pixel(x(effect.high))}M${pixel(x(effect.low))} ${MIDDLE - 6}v12M${pixel(x(effect.high))} ${MIDDLE - 6}v12`}
          />
          <circle className={styles.middle} cx={pixel(x(effect.value))} cy={MIDDLE} r="5" />
        </g>
      )}
      {plain === null ? null : <path className={styles.cross} d={`M${at - 4} ${MIDDLE + 8}l8 8m0 -8l-8 8`} />}
    </svg>
  );
}

/** What the marks mean, as they are drawn. */
export function LegendMark({ look }: { readonly look: "plain" | "few" | "before-after" }) {
  return (
    <svg width="34" height="16" viewBox="0 0 34 16" aria-hidden="true">
      {look === "before-after" ? (
        <path className={styles.cross} d="M13 4l8 8m0 -8l-8 8" />
      ) : (
        <g className={styles[look]}>
          <path className={styles.interval} d="M3 8H31M3 2v12M31 2v12" />
          <circle className={styles.middle} cx="17" cy="8" r="5" />
        </g>
      )}
    </svg>
  );
}
