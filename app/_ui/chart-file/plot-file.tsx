import type { DifferencePlot } from "@/lib/report/reread-model";
import { differenceDrawing } from "../rereads/differences";
import styles from "../rereads/differences.module.css";
import { drawingFile } from "./drawing-file";
import type { ChartLook } from "./inline-style";

/**
 * The plot of readings that were read again as one file (SVG).
 *
 * @param sheets the style sheets of the pages, as text
 */
export function plotFile(
  plot: DifferencePlot,
  sheets: { readonly tokens: string; readonly plot: string },
  look: ChartLook,
): string {
  const drawing = { ...differenceDrawing(plot, "wide"), title: plot.table.caption, summary: plot.sentence };
  return drawingFile(drawing, sheets.tokens, [{ text: sheets.plot, names: styles, prefix: "" }], look);
}
