import { useId } from "react";
import type { Drawing, DrawnLabel, DrawnPoint } from "@/lib/report/drawing-model";
import styles from "./line-drawing.module.css";

/** Pixels between two lines of a label. */
const LINE = 20;

/** Lines that enclose something and are filled. */
const FILLED = ["aim-head", "plus-head"];

function Words({ label, place }: { readonly label: DrawnLabel; readonly place: (point: DrawnPoint) => DrawnPoint }) {
  const { x, y } = place(label.at);
  return (
    <text className={styles[label.role]} x={x} y={y} textAnchor={label.anchor}>
      {label.lines.map((line, i) => (
        <tspan key={line} x={x} y={y + i * LINE}>
          {line}
        </tspan>
      ))}
    </text>
  );
}

/** A plain line drawing with its words; whoever can't see it hears its title and description. */
export function LineDrawing({
  drawing,
  size,
}: {
  readonly drawing: Drawing;
  readonly size: "plan" | "side" | "picture" | "sign";
}) {
  const id = useId();
  const { frame, scale } = drawing;
  const place = ({ x, y }: DrawnPoint): DrawnPoint => ({
    x: Math.round(10 * (x - frame.left) * scale) / 10,
    y: Math.round(10 * (y - frame.top) * scale) / 10,
  });
  const { x: width, y: height } = place({ x: frame.right, y: frame.bottom });
  const path = (points: readonly DrawnPoint[]): string =>
    points
      .map(place)
      .map(({ x, y }, i) => `${i === 0 ? "M" : "L"}${x} ${y}`)
      .join("");
  return (
    <svg
      className={`${styles.drawing} ${styles[size]}`}
      viewBox={`0 0 ${width} ${height}`}
      width={width}
      height={height}
      role="img"
      aria-labelledby={`${id}-title ${id}-desc`}
    >
      <title id={`${id}-title`}>{drawing.title}</title>
      <desc id={`${id}-desc`}>{drawing.description}</desc>
      {drawing.lines.map((line) => {
        const d = `${path(line.points)}${FILLED.includes(line.role) ? "Z" : ""}`;
        return <path key={`${line.role} ${d}`} className={styles[line.role]} d={d} />;
      })}
      {drawing.rounds.map((round) => {
        const { x, y } = place(round.at);
        return (
          <circle
            key={round.role}
            className={styles[`${round.role}-round`] ?? styles[round.role]}
            cx={x}
            cy={y}
            r={round.radius * scale}
          />
        );
      })}
      {drawing.labels.map((label) => (
        <Words key={`${label.lines[0]} ${label.at.x} ${label.at.y}`} label={label} place={place} />
      ))}
    </svg>
  );
}
