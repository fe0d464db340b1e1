import type { SpreadChart } from "@/lib/report/spread-model";
import { spreadDrawing } from "../spread/spread-chart";
import styles from "../spread/spread-chart.module.css";
import { drawingFile } from "./drawing-file";
import type { ChartLook } from "./inline-style";

/**
 * The levels of one fundamental across an academy as one file (SVG).
 *
 * @param sheets the style sheets of the pages, as text
 */
export function spreadFile(
  chart: SpreadChart,
  sheets: { readonly tokens: string; readonly spread: string },
  look: ChartLook,
): string {
  const drawing = { ...spreadDrawing(chart, "wide"), title: chart.title, summary: chart.sentence };
  return drawingFile(drawing, sheets.tokens, [{ text: sheets.spread, names: styles, prefix: "" }], look);
}
