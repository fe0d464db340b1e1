"use client";

import { useId } from "react";
import {
  ComposedChart,
  Customized,
  ErrorBar,
  ReferenceArea,
  ReferenceLine,
  ResponsiveContainer,
  Scatter,
  Tooltip,
  useXAxisScale,
  useYAxisScale,
  XAxis,
  YAxis,
} from "recharts";
import type { ChartSession, SeasonChart } from "@/lib/report/chart-model";
import { wedgePath } from "../chart-marks/change-marks";
import marks from "../chart-marks/chart-marks.module.css";
import { Hatches } from "../chart-marks/hatches";
import { SessionDot, swingPath } from "../chart-marks/session-marks";
import styles from "./live-chart.module.css";

interface Point extends ChartSession {
  readonly doubt: readonly [number, number];
}

/** Swings and wedges in one layer: a mark for each swing would be a thousand nodes. */
function Layer({ chart }: { readonly chart: SeasonChart }) {
  const x = useXAxisScale();
  const y = useYAxisScale();
  if (!x || !y) return null;
  const toX = (value: number) => Number(x(value) ?? 0);
  const toY = (value: number) => Number(y(value) ?? 0);
  return (
    <g>
      {chart.changes.map((change) => (
        <g key={change.from} className={marks[change.direction]}>
          <path className={marks.wedge} d={wedgePath(change, toX, toY)} />
        </g>
      ))}
      <path className={marks.swing} d={swingPath(chart.sessions, toX, toY, { tick: 8, tickOff: 12 })} />
    </g>
  );
}

function Told({
  active,
  payload,
}: {
  readonly active?: boolean;
  readonly payload?: readonly { readonly payload?: Point }[];
}) {
  const session = payload?.[0]?.payload;
  return active && session ? <p className={styles.told}>{session.sentence}</p> : null;
}

function labelOf(ticks: readonly { readonly at: number; readonly label: string }[], at: number): string {
  return ticks.find((tick) => tick.at === at)?.label ?? "";
}

/** The season chart to be pointed at and stepped through; it draws the model and computes nothing. */
export function LiveChart({ chart, title }: { readonly chart: SeasonChart; readonly title: string }) {
  const id = useId().replaceAll(":", "");
  const points: Point[] = chart.sessions.map((session) => ({
    ...session,
    doubt: [session.mean - session.low, session.high - session.mean],
  }));
  return (
    <ResponsiveContainer width="100%" height="100%">
      <ComposedChart
        data={points}
        margin={{ top: 12, right: 96, bottom: 4, left: 0 }}
        accessibilityLayer
        title={title}
        desc={chart.summary}
      >
        <Customized component={<Hatches id={id} />} />
        <XAxis
          type="number"
          dataKey="day"
          domain={[chart.x.from, chart.x.to]}
          ticks={chart.x.ticks.map((tick) => tick.at)}
          tickFormatter={(at: number) => labelOf(chart.x.ticks, at)}
          padding={{ left: 14, right: 10 }}
          allowDataOverflow
        />
        <YAxis
          type="number"
          domain={[chart.y.low, chart.y.high]}
          ticks={chart.y.ticks.map((tick) => tick.at)}
          tickFormatter={(at: number) => labelOf(chart.y.ticks, at)}
          width={64}
          allowDataOverflow
        />
        {chart.bands.map((band) => (
          <ReferenceArea
            key={band.from}
            x1={band.from}
            x2={band.to}
            y1={band.low ?? chart.y.low}
            y2={band.high ?? chart.y.high}
            className={styles.band}
            ifOverflow="hidden"
          />
        ))}
        {chart.bands.at(-1)?.high == null ? null : (
          <ReferenceLine
            y={chart.bands.at(-1)?.high ?? 0}
            className={styles.edge}
            label={{ value: chart.bands.at(-1)?.highLabel ?? "", position: "right" }}
          />
        )}
        {chart.bands.at(-1)?.low == null ? null : (
          <ReferenceLine
            y={chart.bands.at(-1)?.low ?? 0}
            className={styles.edge}
            label={{ value: chart.bands.at(-1)?.lowLabel ?? "", position: "right" }}
          />
        )}
        {chart.changes.map((change) => (
          <ReferenceArea
            key={change.from}
            x1={change.from}
            x2={change.to}
            fill={`url(#${id}-${change.direction})`}
            fillOpacity={1}
            ifOverflow="hidden"
          />
        ))}
        {chart.levels.map((level) => (
          <ReferenceArea
            key={`shade ${level.from} ${level.value}`}
            x1={level.from}
            x2={level.to}
            y1={level.low}
            y2={level.high}
            className={level.standing === "proved" ? styles.shade : styles.openShade}
            ifOverflow="hidden"
          />
        ))}
        {chart.levels.map((level) => (
          <ReferenceLine
            key={`line ${level.from} ${level.value}`}
            segment={[
              { x: level.from, y: level.value },
              { x: level.to, y: level.value },
            ]}
            className={level.standing === "proved" ? styles.level : styles.openLevel}
          />
        ))}
        <Layer chart={chart} />
        <Scatter
          dataKey="mean"
          isAnimationActive={false}
          shape={(point: { cx?: number; cy?: number; payload?: Point }) => (
            <SessionDot mark={point.payload?.mark ?? "used"} cx={point.cx ?? 0} cy={point.cy ?? 0} r={4.5} />
          )}
        >
          <ErrorBar
            dataKey="doubt"
            direction="y"
            width={0}
            strokeWidth={1.75}
            stroke="var(--ink)"
            isAnimationActive={false}
          />
        </Scatter>
        <Tooltip content={<Told />} isAnimationActive={false} cursor={false} />
      </ComposedChart>
    </ResponsiveContainer>
  );
}
