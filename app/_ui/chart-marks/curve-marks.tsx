import type { ChartCurve } from "@/lib/report/chart-model";
import { type PixelScale, type PlotBox, pixel } from "../chart-scale";
import { PLAIN, textWidth } from "../text-width";
import styles from "./chart-marks.module.css";

const STOP = 6;

/**
 * A learning curve: its middle as a thin line, the stretch that holds 80 of 100 between dotted edges; and on the band's edge the
 * days in which it is reached, as a bar with end stops.
 */
export function CurveMarks(props: {
  readonly curve: ChartCurve | null | undefined;
  readonly plot: PlotBox;
  readonly x: PixelScale;
  readonly y: PixelScale;
}) {
  const { curve, plot, x, y } = props;
  if (!curve) return null;
  const path = (of: (point: ChartCurve["points"][number]) => number): string =>
    curve.points.map((point, at) => `${at === 0 ? "M" : "L"}${pixel(x(point.day))} ${pixel(y(of(point)))}`).join("");
  const comes = (curve.points[0]?.middle ?? 0) < (curve.arrival?.at ?? 0) ? "below" : "above";
  return (
    <g>
      <path className={styles.curveEdge} d={path((point) => point.high) + path((point) => point.low)} />
      <path className={styles.curve} d={path((point) => point.middle)} />
      {curve.arrival === null ? null : <Arrival arrival={curve.arrival} comes={comes} plot={plot} x={x} y={y} />}
    </g>
  );
}

function Arrival(props: {
  readonly arrival: NonNullable<ChartCurve["arrival"]>;
  readonly comes: "below" | "above";
  readonly plot: PlotBox;
  readonly x: PixelScale;
  readonly y: PixelScale;
}) {
  const { arrival, comes, plot, x, y } = props;
  const [from, to, at] = [pixel(x(arrival.from)), pixel(x(arrival.to)), pixel(y(arrival.at))];
  const width = textWidth(arrival.label, PLAIN);
  // On the side of the band, for the curve comes from the other; and moved so far that it stays inside the plot.
  const left = Math.max(plot.left, Math.min(to - width, plot.right - width));
  const beside = comes === "below" ? at - 14 : at + 24;
  return (
    <>
      <path
        className={styles.arrival}
        d={`M${from} ${at}H${to}M${from} ${at - STOP}v${2 * STOP}M${to} ${at - STOP}v${2 * STOP}`}
      />
      <text className={`${styles.words} ${styles.halo}`} x={pixel(left)} y={beside}>
        {arrival.label}
      </text>
    </>
  );
}
