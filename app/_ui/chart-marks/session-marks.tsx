import type { ChartSession } from "@/lib/report/chart-model";
import { type PixelScale, pixel } from "../chart-scale";
import styles from "./chart-marks.module.css";

/** Every swing of a chart as one path of short ticks beside their session's bar. */
export function swingPath(
  sessions: readonly ChartSession[],
  x: PixelScale,
  y: PixelScale,
  tick: { readonly tick: number; readonly tickOff: number },
): string {
  return sessions
    .flatMap((session) => {
      const start = pixel(x(session.day) - tick.tickOff);
      return session.swings.map((swing) => `M${start} ${pixel(y(swing))}h${tick.tick}`);
    })
    .join("");
}

/** The dot of a judged session, the hollow dot of one set aside, the hollow square of one with an aid or in a lesson. */
export function SessionDot({
  mark,
  cx,
  cy,
  r,
}: {
  readonly mark: ChartSession["mark"];
  readonly cx: number;
  readonly cy: number;
  readonly r: number;
}) {
  if (mark === "used") return <circle className={styles.dot} cx={pixel(cx)} cy={pixel(cy)} r={r} />;
  if (mark === "set-aside") return <circle className={styles.hollow} cx={pixel(cx)} cy={pixel(cy)} r={r + 0.5} />;
  const side = 2 * r - 1;
  return (
    <rect className={styles.hollow} x={pixel(cx - side / 2)} y={pixel(cy - side / 2)} width={side} height={side} />
  );
}

type DrawnSession = Pick<ChartSession, "day" | "mean" | "low" | "high" | "mark">;

/** Bars of the whole doubt, then the sessions' marks over them. */
export function SessionMarks({
  sessions,
  x,
  y,
  r,
}: {
  readonly sessions: readonly DrawnSession[];
  readonly x: PixelScale;
  readonly y: PixelScale;
  readonly r: number;
}) {
  const bars = (marks: readonly DrawnSession[]) =>
    marks.map(({ day, low, high }) => `M${pixel(x(day))} ${pixel(y(high))}V${pixel(y(low))}`).join("");
  const whole = sessions.filter((session) => session.mark === "used");
  const apart = sessions.filter((session) => session.mark !== "used");
  return (
    <g>
      <path className={styles.bar} d={bars(whole)} />
      <path className={styles.asideBar} d={bars(apart)} />
      {sessions.map((session, index) => (
        // Two sessions can share a day and a mean; their order is all that tells them apart.
        // biome-ignore lint/suspicious/noArrayIndexKey: the list is drawn once and never reordered
        <SessionDot key={index} mark={session.mark} cx={x(session.day)} cy={y(session.mean)} r={r} />
      ))}
    </g>
  );
}
