import type { SeasonPage, SeasonRow } from "@/lib/report/page-model";
import marks from "../chart-marks/chart-marks.module.css";
import { GlyphShape } from "../glyph/glyph";
import glyphs from "../glyph/glyph.module.css";
import { axisDrawing } from "../small-chart/season-axis";
import { smallDrawing } from "../small-chart/small-chart";
import small from "../small-chart/small-chart.module.css";
import { PLAIN, STRONG, wrapText } from "../text-width";
import { drawingFile } from "./drawing-file";
import type { ChartLook } from "./inline-style";

/** Pixels for the words beside a chart, and from one chart to the next. */
const WORDS = 208;
const STEP = 104;
const LINE = 20;

/** Lines of a fundamental's name before it is cut. */
const NAME_LINES = 2;

function Words({ row }: { readonly row: SeasonRow }) {
  const name = wrapText(row.name, WORDS - 16, STRONG).slice(0, NAME_LINES);
  const under = name.length * LINE;
  const facts = row.facts.slice(0, 1).flatMap(({ value }) => wrapText(value, WORDS - 16, PLAIN));
  return (
    <g className={marks.words}>
      {name.map((line, place) => (
        <text key={line} className={marks.strong} y={14 + place * LINE}>
          {line}
        </text>
      ))}
      <g transform={`translate(0 ${under + 2}) scale(0.89)`}>
        <GlyphShape glyph={row.glyph} />
      </g>
      <text x="22" y={under + 15}>
        {row.word}
      </text>
      {facts.slice(0, 2).map((line, place) => (
        <text key={line} className={marks.quiet} y={under + 15 + (place + 1) * LINE}>
          {line}
        </text>
      ))}
    </g>
  );
}

/** Every small chart of a season with its words, one under the other, and the time axis that they share. */
function seasonDrawing(evidence: SeasonPage["evidence"]) {
  const rows = evidence.groups.flatMap((group) => group.rows);
  const charts = rows.map((row) => ({ row, drawn: smallDrawing(row.chart, "wide", `chart-${row.fundamentalId}`) }));
  const days = rows[0]?.chart.x ?? { from: 0, to: 1, ticks: [] };
  const under = { drills: evidence.drills ?? [], events: evidence.events ?? [], practice: evidence.practice ?? null };
  const axis = axisDrawing(days, under, "wide");
  const parts = (
    <>
      {charts.map(({ row, drawn }, place) => (
        <g key={row.fundamentalId} transform={`translate(0 ${place * STEP})`}>
          <Words row={row} />
          <g className={`${small.small} ${marks.small}`} transform={`translate(${WORDS} 0)`}>
            {drawn.parts}
          </g>
        </g>
      ))}
      <g transform={`translate(${WORDS} ${rows.length * STEP})`}>{axis.parts}</g>
    </>
  );
  return { parts, width: WORDS + axis.width, height: rows.length * STEP + axis.height };
}

/**
 * The charts of a season as one file (SVG); it names no student.
 *
 * @param sheets the style sheets of the pages, as text
 */
export function seasonFile(
  evidence: SeasonPage["evidence"],
  sheets: { readonly tokens: string; readonly marks: string; readonly small: string; readonly glyph: string },
  look: ChartLook,
): string {
  const summary = evidence.groups
    .flatMap((group) => group.rows.map((row) => [row.name, row.word, row.text].join(" · ")))
    .join("\n");
  const drawing = { ...seasonDrawing(evidence), title: evidence.heading, summary };
  const of = [
    { text: sheets.marks, names: marks, prefix: "" },
    { text: sheets.small, names: small, prefix: "small-" },
    { text: sheets.glyph, names: glyphs, prefix: "glyph-" },
  ];
  return drawingFile(drawing, sheets.tokens, of, look);
}
