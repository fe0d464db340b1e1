"use client";

import { useId } from "react";
import { ComposedChart, ErrorBar, Scatter, Tooltip, XAxis, YAxis } from "recharts";
import type { ChartSession, SeasonChart } from "@/lib/report/chart-model";
import type { ChartForm } from "../chart-forms";
import { type ChartGeometry, chartGeometry } from "../chart-geometry";
import { Axes } from "../chart-marks/axes";
import { BandField, bandPlaces } from "../chart-marks/band-field";
import { BandWords, EarlierBandWords } from "../chart-marks/band-words";
import { ChangeMarks } from "../chart-marks/change-marks";
import marks from "../chart-marks/chart-marks.module.css";
import { CurveMarks } from "../chart-marks/curve-marks";
import { Hatches } from "../chart-marks/hatches";
import { LevelMarks } from "../chart-marks/level-marks";
import { PracticeLanes } from "../chart-marks/practice-lanes";
import { SessionDot, swingPath } from "../chart-marks/session-marks";
import { Reasons, Ribbons, StoryLane } from "../chart-marks/story-lane";
import styles from "./live-chart.module.css";

interface Point extends ChartSession {
  /** The bar of a judged session, below and above its dot; null: it is not judged. */
  readonly doubt: readonly [number, number] | null;
  /** The same of one that is not judged, drawn broken. */
  readonly apart: readonly [number, number] | null;
}

function pointOf(session: ChartSession): Point {
  const bar = [session.mean - session.low, session.high - session.mean] as const;
  return { ...session, doubt: session.mark === "used" ? bar : null, apart: session.mark === "used" ? null : bar };
}

const BAR = { direction: "y", width: 0, strokeWidth: 1.75, stroke: "var(--ink)", isAnimationActive: false } as const;

/** Everything of the still drawing but the sessions, in the very places: a mark for each swing would be a thousand nodes. */
function Ground({
  chart,
  geometry,
  id,
}: {
  readonly chart: SeasonChart;
  readonly geometry: ChartGeometry;
  readonly id: string;
}) {
  const { plot, x, y, size } = geometry;
  return (
    <g>
      <Hatches id={id} />
      <BandField places={bandPlaces(chart, plot, x, y)} />
      <Axes chart={chart} geometry={geometry} />
      <ChangeMarks changes={chart.changes} hatches={id} plot={plot} x={x} y={y} />
      <LevelMarks levels={chart.levels} hatches={id} x={x} y={y} />
      <CurveMarks curve={chart.curve} plot={plot} x={x} y={y} />
      <path className={marks.swing} d={swingPath(chart.sessions, x, y, size)} />
      <Ribbons ribbons={geometry.ribbons} top={plot.bottom + 32} />
      <PracticeLanes lanes={geometry.practice} />
      <BandWords chart={chart} geometry={geometry} />
      <EarlierBandWords chart={chart} geometry={geometry} />
      <StoryLane geometry={geometry} />
      <Reasons geometry={geometry} />
    </g>
  );
}

interface ToldProps {
  readonly active?: boolean;
  readonly payload?: readonly { readonly payload?: Point }[];
}

function Told({ active, payload }: ToldProps) {
  const session = payload?.[0]?.payload;
  return active && session ? (
    <p className={styles.told} role="status" aria-live="assertive">
      {session.sentence}
    </p>
  ) : null;
}

interface Placed {
  readonly cx?: number;
  readonly cy?: number;
  readonly payload?: Point;
}

/** The season chart to be pointed at and stepped through; it draws the model and computes nothing. */
export function LiveChart({
  chart,
  title,
  form,
}: {
  readonly chart: SeasonChart;
  readonly title: string;
  readonly form: ChartForm;
}) {
  const id = useId().replaceAll(":", "");
  const geometry = chartGeometry(chart, form);
  const { plot, width, height, size } = geometry;
  const points = chart.sessions.map(pointOf);
  return (
    <ComposedChart
      data={points}
      width={width}
      height={height}
      margin={{ top: plot.top, right: width - plot.right, bottom: height - plot.bottom, left: plot.left }}
      accessibilityLayer
      title={title}
      desc={chart.summary}
    >
      <Ground chart={chart} geometry={geometry} id={id} />
      <XAxis type="number" dataKey="day" domain={[chart.x.from, chart.x.to]} allowDataOverflow hide />
      <YAxis type="number" domain={[chart.y.low, chart.y.high]} allowDataOverflow hide />
      <Scatter
        dataKey="mean"
        isAnimationActive={false}
        shape={({ cx, cy, payload }: Placed) => (
          <SessionDot mark={payload?.mark ?? "used"} cx={cx ?? 0} cy={cy ?? 0} r={size.dot} />
        )}
      >
        <ErrorBar {...BAR} dataKey="doubt" />
        <ErrorBar {...BAR} dataKey="apart" strokeDasharray="3 3" />
      </Scatter>
      <Tooltip content={<Told />} isAnimationActive={false} cursor={false} />
    </ComposedChart>
  );
}
