import { useId } from "react";
import type { ChartBand, SeasonChart } from "@/lib/report/chart-model";
import { BandField, bandPlaces } from "../chart-marks/band-field";
import { ChangeMarks } from "../chart-marks/change-marks";
import marks from "../chart-marks/chart-marks.module.css";
import { Hatches } from "../chart-marks/hatches";
import { LevelMarks } from "../chart-marks/level-marks";
import { SessionMarks } from "../chart-marks/session-marks";
import { type PixelScale, pixel, pixelScale } from "../chart-scale";
import styles from "./small-chart.module.css";

const HEIGHT = 84;
const SIZES = { wide: 560, middle: 430, phone: 326 } as const;

/** The widths in which a small chart is drawn. */
export type SmallForm = keyof typeof SIZES;

/** Where the days of a small chart begin and end, in pixels of its drawing. */
export function smallPlot(form: SmallForm) {
  const width = SIZES[form];
  return { width, left: 8, right: width - 66 };
}

const LINE = 16;

/** The words of the band's edges, each beside its edge, drawn apart where the band is lower than a line of text. */
function edgeWords(band: ChartBand | undefined, y: PixelScale) {
  const edges = [
    { at: band?.high ?? null, label: band?.highLabel ?? null },
    { at: band?.low ?? null, label: band?.lowLabel ?? null },
  ].flatMap(({ at, label }) => (at === null || label === null ? [] : [{ at: y(at) + 5, label }]));
  const [high, low] = edges;
  if (high === undefined || low === undefined || low.at - high.at >= LINE) return edges;
  const middle = (high.at + low.at) / 2;
  return [
    { ...high, at: middle - LINE / 2 },
    { ...low, at: middle + LINE / 2 },
  ];
}

/** The parts of one drawing and its size in pixels, for a page and for a file. */
export function smallDrawing(chart: SeasonChart, form: SmallForm, id: string) {
  const { width, left, right } = smallPlot(form);
  const plot = { left: left - 4, right: right + 4, top: 4, bottom: HEIGHT - 16 };
  const x = pixelScale(chart.x, left, right);
  const y = pixelScale({ from: chart.y.low, to: chart.y.high }, plot.bottom, plot.top);
  const band = chart.bands.at(-1);
  const edges = edgeWords(band, y);
  const places = bandPlaces(chart, plot, x, y);
  const parts = (
    <>
      <Hatches id={id} />
      <BandField
        places={places.map((place, at) => ({
          ...place,
          left: at === 0 ? plot.left : place.left,
          right: at === places.length - 1 ? plot.right : place.right,
        }))}
      />
      <path className={styles.axis} d={`M${plot.left} ${plot.bottom}H${plot.right}`} />
      {chart.x.ticks.map((tick) => (
        <path key={tick.at} className={styles.axis} d={`M${pixel(x(tick.at))} ${plot.bottom}v4`} />
      ))}
      <ChangeMarks changes={chart.changes} hatches={id} plot={plot} x={x} y={y} />
      <LevelMarks levels={chart.levels} hatches={id} x={x} y={y} />
      <SessionMarks sessions={chart.sessions} x={x} y={y} r={3} />
      {chart.bands.length > 0
        ? null
        : chart.y.ticks.map((tick) => (
            <text
              key={tick.at}
              className={`${marks.words} ${marks.quiet}`}
              x={plot.right + 6}
              y={pixel(y(tick.at) + 5)}
            >
              {tick.label}
            </text>
          ))}
      {edges.map((edge) => (
        <text key={edge.label} className={`${marks.words} ${styles.edge}`} x={plot.right + 6} y={pixel(edge.at)}>
          {edge.label}
        </text>
      ))}
    </>
  );
  return { parts, width, height: HEIGHT };
}

function Drawing({ chart, form, id }: { readonly chart: SeasonChart; readonly form: SmallForm; readonly id: string }) {
  const { parts, width, height } = smallDrawing(chart, form, id);
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

/** A season chart in the height of a few lines: sessions, levels, changes and the band, or the axis where there is no band; no swings. */
export function SmallChart({ chart, only }: { readonly chart: SeasonChart; readonly only?: "phone" }) {
  const id = useId();
  if (only === "phone")
    return (
      <div className={`${styles.only} ${marks.small}`}>
        <Drawing chart={chart} form="phone" id={id} />
      </div>
    );
  return (
    <div className={`${styles.small} ${marks.small}`}>
      <Drawing chart={chart} form="wide" id={`${id}w`} />
      <Drawing chart={chart} form="middle" id={`${id}m`} />
      <Drawing chart={chart} form="phone" id={`${id}p`} />
    </div>
  );
}
