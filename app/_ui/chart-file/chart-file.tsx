import type { SeasonChart } from "@/lib/report/chart-model";
import type { ChartForm } from "../chart-forms";
import marks from "../chart-marks/chart-marks.module.css";
import { chartDrawing } from "../static-chart/static-chart";
import { type ChartLook, type ChartSheets, classNames, inlineStyle } from "./inline-style";
import { writeMarkup } from "./write-markup";

/** The width of a drawing as a file: that of a printed page. */
const FORM: ChartForm = "page";

/** Room around the drawing, in pixels, so that nothing touches the edge of a picture. */
const MARGIN = 16;

const ID = "chart";

/** The bundler renames classes; a file has the names of its own style sheet. */
function ownNames(markup: string, sheet: string): string {
  const own = new Map(classNames(sheet).map((name) => [marks[name] ?? name, name]));
  return markup.replace(/ class="([^"]*)"/g, (_whole, list: string) => {
    const names = list.split(" ").flatMap((name) => own.get(name) ?? []);
    return names.length === 0 ? "" : ` class="${names.join(" ")}"`;
  });
}

/**
 * A season chart as one file (SVG): the drawing of the page with its styles in it, a title and a description, and nothing
 * that is fetched or runs.
 *
 * @param sheets the style sheets of the pages, as text
 */
export function chartFile(chart: SeasonChart, sheets: ChartSheets, look: ChartLook): string {
  const { parts, width, height } = chartDrawing(chart, FORM, ID);
  const { css, paper } = inlineStyle(sheets, look);
  const [wide, high] = [width + 2 * MARGIN, height + 2 * MARGIN];
  const box = `${-MARGIN} ${-MARGIN} ${wide} ${high}`;
  const markup = ownNames(writeMarkup(parts), sheets.marks);
  return [
    '<?xml version="1.0" encoding="UTF-8"?>',
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="${box}" width="${wide}" height="${high}" role="img" aria-labelledby="${ID}-title ${ID}-desc">`,
    `<style>${css.replaceAll("&", "&amp;").replaceAll("<", "&lt;")}</style>`,
    `<rect x="${-MARGIN}" y="${-MARGIN}" width="${wide}" height="${high}" fill="${paper}"/>`,
    writeMarkup([
      <title key="title" id={`${ID}-title`}>
        {chart.heading}
      </title>,
      <desc key="desc" id={`${ID}-desc`}>
        {chart.summary}
      </desc>,
    ]),
    markup,
    "</svg>",
    "",
  ].join("\n");
}
