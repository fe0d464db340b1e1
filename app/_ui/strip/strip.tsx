import type { Strip as StripModel } from "@/lib/report/chart-model";
import { pixel } from "../chart-scale";
import styles from "./strip.module.css";

const WIDTH = 94;
const HEIGHT = 36;
const LOW = (HEIGHT * 2) / 3;
const HIGH = HEIGHT / 3;
/** Pixels kept free behind the last day for a verdict's shape; the band runs on under it. */
const SHAPE = 20;

const MARKS = ["used", "aided", "set-aside"] as const;

function Band({ edges, width }: { readonly edges: StripModel["edges"]; readonly width: number }) {
  if (edges === "none") return null;
  const top = edges === "low" ? 0 : HIGH;
  const bottom = edges === "high" ? HEIGHT : LOW;
  const high = edges === "low" ? "" : `M0 ${HIGH}H${width}`;
  const low = edges === "high" ? "" : `M0 ${LOW}H${width}`;
  return (
    <>
      <rect className={styles.band} x="0" y={top} width={width} height={bottom - top} />
      <path className={styles.edge} d={high + low} />
    </>
  );
}

/** A track as high as a line of text; the goal band always lies at the same height. */
export function Strip({
  model,
  width,
  end,
}: {
  readonly model: StripModel;
  readonly width?: 94 | 200 | 300;
  /** What stands behind the last day: nothing, or room for a verdict's shape. */
  readonly end?: "nothing" | "shape";
}) {
  const wide = width ?? WIDTH;
  const days = end === "shape" ? wide - SHAPE : wide;
  const x = (part: number) => pixel(2 + part * (days - 4));
  const y = (part: number) => pixel(HEIGHT * (1 - part));
  return (
    <svg
      className={styles.strip}
      width={wide}
      height={HEIGHT}
      viewBox={`0 0 ${wide} ${HEIGHT}`}
      role="img"
      aria-label={model.summary}
    >
      <Band edges={model.edges} width={wide} />
      {model.changes.map((change) => (
        <path
          key={`${change.x0} ${change.x1}`}
          className={styles[change.direction]}
          d={`M${x(change.x0)} ${y(change.y0)}L${x(Math.max(change.x1, change.x0 + 0.04))} ${pixel(y(change.y1) - 4)}V${pixel(y(change.y1) + 4)}Z`}
        />
      ))}
      {model.levels.map((level) => (
        <path
          key={`${level.x0} ${level.y}`}
          className={styles.level}
          d={`M${x(level.x0)} ${y(level.y)}H${x(Math.max(level.x1, level.x0 + 0.02))}`}
        />
      ))}
      {MARKS.map((mark) => {
        const dots = model.dots.filter((dot) => dot.mark === mark);
        // One path for all: a circle each would make the roster's page several times as heavy.
        const places = dots.map((dot) => `M${x(dot.x)} ${y(dot.y)}h0`).join("");
        return dots.length === 0 ? null : (
          <g key={mark} className={styles[mark]}>
            <path d={places} />
            {mark === "used" ? null : <path className={styles.hole} d={places} />}
          </g>
        );
      })}
    </svg>
  );
}

/** The band of a row where nothing is measured; what it means is said beside it. */
export function EmptyStrip() {
  return (
    <svg className={styles.strip} width={WIDTH} height={HEIGHT} viewBox={`0 0 ${WIDTH} ${HEIGHT}`} aria-hidden="true">
      <Band edges="both" width={WIDTH} />
      <path className={styles.none} d={`M${(WIDTH - SHAPE) / 2 - 3} ${HEIGHT / 2}h6`} />
    </svg>
  );
}
