import { useId } from "react";
import type { FamilyPicture } from "@/lib/report/family-look-model";
import { type FamilyForm, familyGeometry, familyMonthTicks } from "../chart-family";
import { BandField, bandPlaces } from "../chart-marks/band-field";
import { ChangeMarks } from "../chart-marks/change-marks";
import marks from "../chart-marks/chart-marks.module.css";
import { Hatches } from "../chart-marks/hatches";
import { LevelMarks } from "../chart-marks/level-marks";
import { SessionMarks } from "../chart-marks/session-marks";
import { StoryLane } from "../chart-marks/story-lane";
import { pixel } from "../chart-scale";
import styles from "./picture.module.css";

/** The parts of one drawing and its size in pixels, for a page and for a file. */
export function familyDrawing(picture: FamilyPicture, form: FamilyForm, id: string) {
  const geometry = familyGeometry(picture, form);
  const { width, height, plot, x, y, dot } = geometry;
  const band = bandPlaces(picture, plot, x, y).at(-1);
  const parts = (
    <>
      <Hatches id={id} />
      <BandField places={bandPlaces(picture, plot, x, y)} />
      <path className={marks.axis} d={`M${plot.left} ${pixel(plot.bottom)}H${pixel(plot.right)}`} />
      <ChangeMarks changes={picture.changes} hatches={id} plot={plot} x={x} y={y} />
      <LevelMarks levels={picture.levels} hatches={id} x={x} y={y} />
      <SessionMarks sessions={picture.sessions} x={x} y={y} r={dot} />
      <StoryLane geometry={geometry} />
      <g className={`${marks.words} ${styles.ends}`}>
        {picture.high === "" ? null : (
          <text x={plot.left} y={pixel(geometry.high)}>
            ↑ {picture.high}
          </text>
        )}
        {picture.low === "" ? null : (
          <text x={plot.left} y={pixel(geometry.low)}>
            ↓ {picture.low}
          </text>
        )}
      </g>
      {band === undefined || picture.inside === "" ? null : (
        <text
          className={`${marks.words} ${marks.bandWord} ${marks.strong}`}
          x={pixel(plot.right + 8)}
          y={pixel((band.top + band.bottom) / 2 + 5)}
        >
          {picture.inside}
        </text>
      )}
      <g className={`${marks.words} ${marks.quiet}`}>
        {familyMonthTicks(picture, geometry).map((tick) => (
          <text key={tick.at} x={pixel(x(tick.at))} y={pixel(geometry.months)}>
            {tick.label}
          </text>
        ))}
        <path
          className={marks.axis}
          d={picture.x.ticks.map((tick) => `M${pixel(x(tick.at))} ${pixel(plot.bottom)}v5`).join("")}
        />
      </g>
    </>
  );
  return { parts, width, height };
}

function Drawing(props: { readonly picture: FamilyPicture; readonly form: FamilyForm; readonly id: string }) {
  const { picture, form, id } = props;
  const { parts, width, height } = familyDrawing(picture, form, id);
  return (
    <svg
      className={styles[form]}
      viewBox={`0 0 ${width} ${height}`}
      width={width}
      height={height}
      role="img"
      aria-labelledby={`${id}-title ${id}-desc`}
    >
      <title id={`${id}-title`}>{picture.heading}</title>
      <desc id={`${id}-desc`}>{picture.summary}</desc>
      {parts}
    </svg>
  );
}

/** One fundamental's season, large, with how to read it; still, and drawn on the server. */
export function Picture({ model }: { readonly model: FamilyPicture }) {
  const id = useId();
  return (
    <>
      <h2>{model.heading}</h2>
      <div className={styles.drawings}>
        <Drawing picture={model} form="phone" id={`${id}p`} />
        <Drawing picture={model} form="wide" id={`${id}w`} />
      </div>
      <p className={styles.reads}>{model.reads.join(" ")}</p>
    </>
  );
}
