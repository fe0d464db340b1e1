import { readFileSync } from "node:fs";
import path from "node:path";
import { notFound } from "next/navigation";
import { cache } from "react";
import type { SeasonChart } from "@/lib/report/chart-model";
import type { SeasonPage } from "@/lib/report/page-model";
import type { DifferencePlot } from "@/lib/report/reread-model";
import type { SpreadChart } from "@/lib/report/spread-model";
import { loadSpread } from "../academy/load-spread";
import { fileResponse } from "../door/download";
import { requireStudent, requireViewer } from "../gate";
import { loadReaderError } from "../reread/load-rereads";
import { loadFundamental } from "../season/load-fundamental";
import { loadSeason } from "../season/load-season";

/** The style sheets of the pages as text, for drawings that must stand without them. */
interface Sheets {
  readonly tokens: string;
  readonly marks: string;
  readonly small: string;
  readonly glyph: string;
  readonly plot: string;
  readonly spread: string;
}

const LOOKS = ["colour", "one-colour"] as const;

/** Writes a part of a page's model as SVG; the drawing belongs to the pages. */
type Draw<T> = (model: T, sheets: Sheets, look: (typeof LOOKS)[number]) => string;

const readSheets = cache((): Sheets => {
  const read = (...parts: readonly string[]): string =>
    readFileSync(path.join(/* turbopackIgnore: true */ process.cwd(), "app", "_ui", ...parts), "utf8");
  return {
    tokens: read("tokens.css"),
    marks: read("chart-marks", "chart-marks.module.css"),
    small: read("small-chart", "small-chart.module.css"),
    glyph: read("glyph", "glyph.module.css"),
    plot: read("rereads", "differences.module.css"),
    spread: read("spread", "spread-chart.module.css"),
  };
});

/** A drawing to be kept; there is none where the page has no such chart. */
function drawn<T>(name: string, model: T | null | undefined, asked: URLSearchParams, draw: Draw<T>): Response {
  if (model === null || model === undefined) notFound();
  const look = LOOKS.find((each) => each === asked.get("look")) ?? "colour";
  return fileResponse(`${name}.svg`, "image/svg+xml; charset=utf-8", draw(model, readSheets(), look));
}

const clubOf = (asked: URLSearchParams): string | undefined => asked.get("club") || undefined;

/** The chart of one fundamental's page as a file of its own. */
export async function downloadChart(
  which: { readonly studentId: string; readonly fundamental: string },
  asked: URLSearchParams,
  draw: Draw<SeasonChart>,
): Promise<Response> {
  const viewer = await requireStudent("GET /api/students/[studentId]/[fundamental]/svg", which.studentId);
  const { evidence } = await loadFundamental(viewer, which.fundamental, clubOf(asked));
  return drawn(which.fundamental, evidence.chart, asked, draw);
}

/** The chart of solid strikes as a file of its own. */
export async function downloadContactChart(
  studentId: string,
  asked: URLSearchParams,
  draw: Draw<SeasonChart>,
): Promise<Response> {
  const { contact } = await loadSeason(
    await requireStudent("GET /api/students/[studentId]/contact/svg", studentId),
    clubOf(asked),
  );
  return drawn("contact", contact?.judged?.chart, asked, draw);
}

/** All charts of a season as one drawing. */
export async function downloadSeasonChart(
  studentId: string,
  asked: URLSearchParams,
  draw: Draw<SeasonPage["evidence"]>,
): Promise<Response> {
  const { evidence } = await loadSeason(
    await requireStudent("GET /api/students/[studentId]/season/svg", studentId),
    clubOf(asked),
  );
  return drawn("season", evidence.files === null ? null : evidence, asked, draw);
}

/** The plot of what was read again of one fundamental at one level, as a file of its own. */
export async function downloadRereadPlot(
  fundamentalId: string,
  asked: URLSearchParams,
  draw: Draw<DifferencePlot>,
): Promise<Response> {
  const page = loadReaderError(await requireViewer("GET /api/rereads/[fundamental]/svg"), fundamentalId);
  const level = asked.get("level") === "a" ? page?.still : page?.film;
  return drawn(`rereads-${fundamentalId}`, level?.plot, asked, draw);
}

/** The levels of one fundamental across the academy, as a file of their own. */
export async function downloadSpread(
  fundamentalId: string,
  asked: URLSearchParams,
  draw: Draw<SpreadChart>,
): Promise<Response> {
  const viewer = await requireViewer("GET /api/academy/[fundamental]/svg");
  const page = await loadSpread(viewer, fundamentalId, { of: asked.get("of") ?? undefined });
  return drawn(`academy-${fundamentalId}`, page?.counted?.levels.chart, asked, draw);
}
