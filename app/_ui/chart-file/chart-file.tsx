import type { SeasonChart } from "@/lib/report/chart-model";
import type { ChartForm } from "../chart-forms";
import marks from "../chart-marks/chart-marks.module.css";
import { chartDrawing } from "../static-chart/static-chart";
import { drawingFile } from "./drawing-file";
import type { ChartLook, ChartSheets } from "./inline-style";

/** The width of a drawing as a file: that of a printed page. */
const FORM: ChartForm = "page";

/**
 * The large chart of one track, or that of solid strikes, as one file (SVG).
 *
 * @param sheets the style sheets of the pages, as text
 */
export function chartFile(chart: SeasonChart, sheets: ChartSheets, look: ChartLook): string {
  const drawing = { ...chartDrawing(chart, FORM, "chart"), title: chart.heading, summary: chart.summary };
  return drawingFile(drawing, sheets.tokens, [{ text: sheets.marks, names: marks, prefix: "" }], look);
}
