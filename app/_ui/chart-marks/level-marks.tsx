import type { ChartLevel } from "@/lib/report/chart-model";
import { type PixelScale, pixel } from "../chart-scale";
import styles from "./chart-marks.module.css";

/** A level over its days with the shade of its interval; not settled is dashed and hatched. */
export function LevelMarks({
  levels,
  hatches,
  x,
  y,
}: {
  readonly levels: readonly ChartLevel[];
  readonly hatches: string;
  readonly x: PixelScale;
  readonly y: PixelScale;
}) {
  return levels.map((level) => {
    const from = pixel(x(level.from));
    const to = pixel(x(level.to));
    const top = pixel(y(level.high));
    const shade = { x: from, y: top, width: pixel(to - from), height: pixel(y(level.low) - top) };
    const proved = level.standing === "proved";
    return (
      <g key={level.from}>
        {proved ? <rect className={styles.shade} {...shade} /> : <rect fill={`url(#${hatches}-open)`} {...shade} />}
        <path className={proved ? styles.level : styles.openLevel} d={`M${from} ${pixel(y(level.value))}H${to}`} />
      </g>
    );
  });
}
