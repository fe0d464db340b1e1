import type { PracticePlace } from "../chart-practice";
import { pixel } from "../chart-scale";
import styles from "./chart-marks.module.css";

/** Practice as bars of weeks, beneath drills and events. */
export function PracticeLanes({ lanes }: { readonly lanes: readonly PracticePlace[] }) {
  return (
    <g className={styles.words}>
      {lanes.map((lane) => (
        <g key={lane.label}>
          <text className={styles.quiet} x={pixel(lane.labelX)} y={pixel(lane.labelY)}>
            {lane.label}
          </text>
          {lane.bars.map((bar) => (
            <rect
              key={bar.label}
              className={styles.practice}
              x={pixel(bar.x)}
              y={pixel(bar.y)}
              width={pixel(bar.width)}
              height={pixel(bar.height)}
            >
              <title>{bar.label}</title>
            </rect>
          ))}
          <path className={styles.axis} d={`M${pixel(lane.left)} ${pixel(lane.baseline)}H${pixel(lane.right)}`} />
        </g>
      ))}
    </g>
  );
}
