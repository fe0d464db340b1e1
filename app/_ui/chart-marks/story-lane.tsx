import type { FormSize } from "../chart-forms";
import type { ChartGeometry } from "../chart-geometry";
import type { RibbonPlace } from "../chart-ribbons";
import { pixel } from "../chart-scale";
import styles from "./chart-marks.module.css";

const WORD_STYLES = {
  toward: styles.towardWord,
  away: styles.awayWord,
  neither: styles.neitherWord,
  level: "",
} as const;

/** The story above the plot: level, change and its days, level. */
export function StoryLane({
  geometry,
}: {
  readonly geometry: Pick<ChartGeometry, "story"> & { readonly size: Pick<FormSize, "lane"> };
}) {
  const lanes = geometry.size.lane;
  return (
    <g className={styles.words}>
      {geometry.story.map((words) => {
        const level = words.kind === "level";
        const second = words.y + (level && lanes === "two" ? 18 : 38);
        return (
          <g key={`${words.kind}${words.x}${words.y}`} className={WORD_STYLES[words.kind]} textAnchor={words.anchor}>
            {words.first === "" ? null : (
              <text className={level ? styles.quiet : styles.strong} x={pixel(words.x)} y={pixel(words.y + 18)}>
                {words.first}
              </text>
            )}
            <text className={level ? styles.value : undefined} x={pixel(words.x)} y={pixel(second)}>
              {words.second}
            </text>
          </g>
        );
      })}
    </g>
  );
}

/** Why sessions are set aside, beside their marks. */
export function Reasons({ geometry }: { readonly geometry: ChartGeometry }) {
  return (
    <g className={`${styles.words} ${styles.halo}`}>
      {geometry.reasons.flatMap((reason) =>
        reason.lines.map((line, index) => (
          <text
            key={`${reason.x}${reason.y}${line}`}
            x={pixel(reason.x)}
            y={pixel(reason.y + index * 19)}
            textAnchor={reason.anchor}
          >
            {line}
          </text>
        )),
      )}
    </g>
  );
}

/** What an event ends with: a stop, or a point towards what is still to come. */
function endStop(end: RibbonPlace["end"], to: number, y: number): string {
  return end === "open" ? `M${to - 6} ${y + 4}L${to} ${y + 10}L${to - 6} ${y + 16}` : `M${to} ${y + 4}v12`;
}

/** Drills as ribbons and events as bars with end stops, under the time axis. */
export function Ribbons({ ribbons, top }: { readonly ribbons: readonly RibbonPlace[]; readonly top: number }) {
  return (
    <g className={styles.words}>
      {ribbons.map((ribbon) => {
        const y = pixel(top + ribbon.row * 26);
        const from = pixel(ribbon.x);
        const to = pixel(ribbon.x + ribbon.width);
        return (
          <g key={`${ribbon.kind}${ribbon.x}${ribbon.row}`}>
            {ribbon.kind === "drill" ? (
              <rect className={styles.ribbon} x={from} y={y} width={pixel(ribbon.width)} height={20} />
            ) : (
              <path
                className={styles.event}
                d={`M${from} ${y + 4}v12M${from} ${y + 10}H${to}${endStop(ribbon.end, to, y)}`}
              />
            )}
            <text x={pixel(ribbon.labelX)} y={pixel(top + ribbon.labelRow * 26 + 15)} textAnchor={ribbon.anchor}>
              {ribbon.label}
            </text>
          </g>
        );
      })}
    </g>
  );
}
