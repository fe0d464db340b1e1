import type { ReactNode } from "react";
import { type ChartLook, classNames, inlineStyle } from "./inline-style";
import { writeMarkup } from "./write-markup";

/** A drawing that is to stand alone. Its parts are functions of their props. */
export interface FileDrawing {
  readonly title: string;
  /** The same in words, for who can't see it. */
  readonly summary: string;
  readonly parts: ReactNode;
  readonly width: number;
  readonly height: number;
}

/** A style sheet of a part of the drawing: its text, and what the bundler made of its names. */
export interface PartSheet {
  readonly text: string;
  readonly names: Readonly<Record<string, string>>;
  /** Put before each name in the file, so that two sheets may have one name; empty: none. */
  readonly prefix: string;
}

/** Room around the drawing, in pixels, so that nothing touches the edge of a picture. */
const MARGIN = 16;

const ID = "chart";

const COMMENT = /\/\*[\s\S]*?\*\//g;

/** The bundler renames classes; a file has the names of its own style sheets. */
function ownNames(markup: string, sheets: readonly PartSheet[]): string {
  const own = new Map<string, string[]>();
  for (const { text, names, prefix } of sheets)
    for (const name of classNames(text)) {
      const bundled = names[name] ?? name;
      own.set(bundled, [...(own.get(bundled) ?? []), `${prefix}${name}`]);
    }
  return markup.replace(/ class="([^"]*)"/g, (_whole, list: string) => {
    const names = list.split(" ").flatMap((name) => own.get(name) ?? []);
    return names.length === 0 ? "" : ` class="${names.join(" ")}"`;
  });
}

function joined(sheets: readonly PartSheet[]): string {
  return sheets
    .map(({ text, prefix }) => text.replace(COMMENT, "").replace(/\.(?=[A-Za-z])/g, `.${prefix}`))
    .join("\n");
}

/** The parts of a drawing written out with the names of its own sheets, those sheets as one text, and which names it has. */
export function drawnParts(parts: ReactNode, sheets: readonly PartSheet[]) {
  const markup = ownNames(writeMarkup(parts), sheets);
  const used = new Set([...markup.matchAll(/ class="([^"]*)"/g)].flatMap(([, list]) => (list ?? "").split(" ")));
  return { markup, used, sheet: joined(sheets) };
}

/**
 * A drawing of a page as one file (SVG): with its styles in it, a title and a description, and nothing that is fetched or
 * runs.
 *
 * @param tokens the style sheet of the pages' tokens, as text
 */
export function drawingFile(
  drawing: FileDrawing,
  tokens: string,
  sheets: readonly PartSheet[],
  look: ChartLook,
): string {
  const { markup, used, sheet } = drawnParts(drawing.parts, sheets);
  const { css, paper } = inlineStyle({ tokens, marks: sheet }, look, used);
  const [wide, high] = [drawing.width + 2 * MARGIN, drawing.height + 2 * MARGIN];
  const box = `${-MARGIN} ${-MARGIN} ${wide} ${high}`;
  return [
    '<?xml version="1.0" encoding="UTF-8"?>',
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="${box}" width="${wide}" height="${high}" role="img" aria-labelledby="${ID}-title ${ID}-desc">`,
    `<style>${css.replaceAll("&", "&amp;").replaceAll("<", "&lt;")}</style>`,
    `<rect x="${-MARGIN}" y="${-MARGIN}" width="${wide}" height="${high}" fill="${paper}"/>`,
    writeMarkup([
      <title key="title" id={`${ID}-title`}>
        {drawing.title}
      </title>,
      <desc key="desc" id={`${ID}-desc`}>
        {drawing.summary}
      </desc>,
    ]),
    markup,
    "</svg>",
    "",
  ].join("\n");
}
