import { readFileSync } from "node:fs";
import path from "node:path";
import { cache } from "react";
import type { SeasonChart } from "@/lib/report/chart-model";
import { fileResponse } from "../door/download";
import { requireStudent } from "../gate";
import { loadFundamental } from "../season/load-fundamental";

/** The style sheets of the pages as text, for a drawing that must stand without them. */
interface Sheets {
  readonly tokens: string;
  readonly marks: string;
}

const LOOKS = ["colour", "one-colour"] as const;

const readSheets = cache((): Sheets => {
  const read = (...parts: readonly string[]): string =>
    readFileSync(path.join(/* turbopackIgnore: true */ process.cwd(), "app", "_ui", ...parts), "utf8");
  return { tokens: read("tokens.css"), marks: read("chart-marks", "chart-marks.module.css") };
});

/**
 * The chart of one fundamental's page as a file of its own.
 *
 * @param draw writes a chart as SVG; the drawing belongs to the pages
 */
export async function downloadChart(
  which: { readonly studentId: string; readonly fundamental: string },
  asked: URLSearchParams,
  draw: (chart: SeasonChart, sheets: Sheets, look: (typeof LOOKS)[number]) => string,
): Promise<Response> {
  const viewer = await requireStudent(which.studentId);
  const { evidence } = await loadFundamental(viewer, which.fundamental, asked.get("club") ?? undefined);
  const look = LOOKS.find((each) => each === asked.get("look")) ?? "colour";
  return fileResponse(
    `${which.fundamental}.svg`,
    "image/svg+xml; charset=utf-8",
    draw(evidence.chart, readSheets(), look),
  );
}
