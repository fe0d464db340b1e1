import type { SeasonChart } from "@/lib/report/chart-model";
import { type PixelScale, type PlotBox, pixel } from "../chart-scale";
import styles from "./chart-marks.module.css";

/** A band's field in pixels; an edge that the band lacks, or that lies off the axis, is null. */
export interface BandPlace {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  readonly highEdge: number | null;
  readonly lowEdge: number | null;
}

/** Turns the goal bands of a chart into pixels. */
export function bandPlaces(
  chart: Pick<SeasonChart, "bands"> & { readonly y: Pick<SeasonChart["y"], "low" | "high"> },
  plot: PlotBox,
  x: PixelScale,
  y: PixelScale,
): readonly BandPlace[] {
  const onAxis = (value: number | null) => value !== null && value >= chart.y.low && value <= chart.y.high;
  return chart.bands.map((band) => ({
    left: x(band.from),
    right: x(band.to),
    top: band.high === null ? plot.top : y(band.high),
    bottom: band.low === null ? plot.bottom : y(band.low),
    highEdge: band.high !== null && onAxis(band.high) ? y(band.high) : null,
    lowEdge: band.low !== null && onAxis(band.low) ? y(band.low) : null,
  }));
}

/** The edges of a band as one path. */
export function bandEdges({ left, right, highEdge, lowEdge }: BandPlace): string {
  return [highEdge, lowEdge]
    .map((edge) => (edge === null ? "" : `M${pixel(left)} ${pixel(edge)}H${pixel(right)}`))
    .join("");
}

/** The quiet field of the goal band with its edges. */
export function BandField({ places }: { readonly places: readonly BandPlace[] }) {
  return places.map((place) => (
    <g key={place.left}>
      <rect
        className={styles.field}
        x={pixel(place.left)}
        y={pixel(place.top)}
        width={pixel(place.right - place.left)}
        height={pixel(Math.max(0, place.bottom - place.top))}
      />
      <path className={styles.edge} d={bandEdges(place)} />
    </g>
  ));
}
