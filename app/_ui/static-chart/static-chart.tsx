import { useId } from "react";
import type { SeasonChart } from "@/lib/report/chart-model";
import { type ChartForm, FORMS, type PaperForm } from "../chart-forms";
import { chartGeometry } from "../chart-geometry";
import { Axes } from "../chart-marks/axes";
import { BandField, bandPlaces } from "../chart-marks/band-field";
import { BandWords, EarlierBandWords } from "../chart-marks/band-words";
import { ChangeMarks } from "../chart-marks/change-marks";
import marks from "../chart-marks/chart-marks.module.css";
import { CurveMarks } from "../chart-marks/curve-marks";
import { Hatches } from "../chart-marks/hatches";
import { LevelMarks } from "../chart-marks/level-marks";
import { PracticeLanes } from "../chart-marks/practice-lanes";
import { SessionMarks, swingPath } from "../chart-marks/session-marks";
import { Reasons, Ribbons, StoryLane } from "../chart-marks/story-lane";
import styles from "./static-chart.module.css";

/** The parts of one drawing and its size in pixels, for a page and for a file. */
export function chartDrawing(chart: SeasonChart, form: ChartForm | PaperForm, id: string) {
  const geometry = chartGeometry(chart, form);
  const { width, height, plot, x, y, size } = geometry;
  const parts = (
    <>
      <Hatches id={id} />
      <BandField places={bandPlaces(chart, plot, x, y)} />
      <Axes chart={chart} geometry={geometry} />
      <ChangeMarks changes={chart.changes} hatches={id} plot={plot} x={x} y={y} />
      <LevelMarks levels={chart.levels} hatches={id} x={x} y={y} />
      <CurveMarks curve={chart.curve} plot={plot} x={x} y={y} />
      <path className={marks.swing} d={swingPath(chart.sessions, x, y, size)} />
      <SessionMarks sessions={chart.sessions} x={x} y={y} r={size.dot} />
      <Ribbons ribbons={geometry.ribbons} top={plot.bottom + 32} />
      <PracticeLanes lanes={geometry.practice} />
      <BandWords chart={chart} geometry={geometry} />
      <EarlierBandWords chart={chart} geometry={geometry} />
      <StoryLane geometry={geometry} />
      <Reasons geometry={geometry} />
    </>
  );
  return { parts, width, height };
}

function Drawing(props: { readonly chart: SeasonChart; readonly form: ChartForm | PaperForm; readonly id: string }) {
  const { chart, form, id } = props;
  const { parts, width, height } = chartDrawing(chart, form, id);
  return (
    <svg
      className={styles[form]}
      viewBox={`0 0 ${width} ${height}`}
      width={width}
      height={height}
      role="img"
      aria-labelledby={`${id}-title ${id}-desc`}
    >
      <title id={`${id}-title`}>{chart.heading}</title>
      <desc id={`${id}-desc`}>{chart.summary}</desc>
      {parts}
    </svg>
  );
}

/**
 * The season chart as still drawings, one for each width; the style sheet shows the one that fits, and paper has its own:
 * that of a page, or the low one of a report.
 */
export function StaticChart({ chart, print }: { readonly chart: SeasonChart; readonly print?: "page" | "paper" }) {
  const id = useId();
  const forms = print === "paper" ? [...FORMS, "paper" as const] : FORMS;
  return (
    <div className={print === "paper" ? `${styles.drawings} ${styles.low}` : styles.drawings}>
      {forms.map((form) => (
        <Drawing key={form} chart={chart} form={form} id={`${id}${form}`} />
      ))}
    </div>
  );
}
