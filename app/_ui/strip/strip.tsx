import type { Strip as StripModel } from "@/lib/report/chart-model";
import { pixel } from "../chart-scale";
import styles from "./strip.module.css";

const WIDTH = 94;
const HEIGHT = 36;

/** A track as high as a line of text; the goal band always lies at the same height. */
export function Strip({ model, width }: { readonly model: StripModel; readonly width?: 94 | 200 | 300 }) {
  const wide = width ?? WIDTH;
  const x = (part: number) => pixel(2 + part * (wide - 4));
  const y = (part: number) => pixel(HEIGHT * (1 - part));
  const top = model.edges === "low" ? 0 : HEIGHT / 3;
  const bottom = model.edges === "high" ? HEIGHT : (HEIGHT * 2) / 3;
  return (
    <svg
      className={styles.strip}
      width={wide}
      height={HEIGHT}
      viewBox={`0 0 ${wide} ${HEIGHT}`}
      role="img"
      aria-label={model.summary}
    >
      {model.edges === "none" ? null : (
        <rect className={styles.band} x="0" y={top} width={wide} height={bottom - top} />
      )}
      {model.edges === "both" || model.edges === "high" ? (
        <path className={styles.edge} d={`M0 ${HEIGHT / 3}H${wide}`} />
      ) : null}
      {model.edges === "both" || model.edges === "low" ? (
        <path className={styles.edge} d={`M0 ${(HEIGHT * 2) / 3}H${wide}`} />
      ) : null}
      {model.changes.map((change) => (
        <path
          key={`${change.x0} ${change.x1}`}
          className={styles[change.direction]}
          d={`M${x(change.x0)} ${y(change.y0)}L${x(Math.max(change.x1, change.x0 + 0.04))} ${y(change.y1) - 4}V${y(change.y1) + 4}Z`}
        />
      ))}
      {model.levels.map((level) => (
        <path
          key={`${level.x0} ${level.y}`}
          className={styles.level}
          d={`M${x(level.x0)} ${y(level.y)}H${x(Math.max(level.x1, level.x0 + 0.02))}`}
        />
      ))}
      {model.dots.map((dot, at) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: dots of a finished strip never move.
        <circle key={at} className={styles[dot.mark]} cx={x(dot.x)} cy={y(dot.y)} r="1.6" />
      ))}
    </svg>
  );
}
