/** Style sheets of the pages as text: tokens, and the marks of a drawing. */
export interface ChartSheets {
  readonly tokens: string;
  readonly marks: string;
}

/** In the colours of a light page, or in one colour as on paper. */
export type ChartLook = "colour" | "one-colour";

const COMMENT = /\/\*[\s\S]*?\*\//g;

/** The blocks of a sheet at its top level: what stands before each brace, and within. */
function blocksOf(sheet: string): (readonly [head: string, body: string])[] {
  const blocks: (readonly [string, string])[] = [];
  const text = sheet.replace(COMMENT, "");
  let [depth, headFrom, bodyFrom] = [0, 0, 0];
  for (let at = 0; at < text.length; at++) {
    if (text[at] === "{" && depth++ === 0) bodyFrom = at + 1;
    else if (text[at] === "}" && --depth === 0) {
      blocks.push([text.slice(headFrom, bodyFrom - 1).trim(), text.slice(bodyFrom, at).trim()]);
      headFrom = at + 1;
    }
  }
  return blocks;
}

/** The names of the classes that a sheet has rules for. */
export function classNames(sheet: string): string[] {
  return [...new Set([...sheet.replace(COMMENT, "").matchAll(/\.([A-Za-z][\w-]*)/g)].map(([, name]) => name ?? ""))];
}

/** The rules that hold: those of every page, and on paper those of print after them. */
function rulesFor(sheet: string, look: ChartLook): (readonly [string, string])[] {
  const blocks = blocksOf(sheet);
  const print = blocks.filter(([head]) => head === "@media print").flatMap(([, body]) => blocksOf(body));
  return [...blocks.filter(([head]) => !head.startsWith("@")), ...(look === "one-colour" ? print : [])];
}

function tokensOf(sheet: string, look: ChartLook): Map<string, string> {
  const tokens = new Map<string, string>();
  for (const [head, body] of rulesFor(sheet, look))
    if (head === ":root")
      for (const [, name, value] of body.matchAll(/(--[\w-]+):\s*([^;]+);?/g))
        tokens.set(name ?? "", (value ?? "").trim());
  return tokens;
}

/** `rgb(27 35 48 / 0.12)` in the older way of writing, which every program that opens drawings knows. */
function olderColour(text: string): string {
  return text.replace(/rgb\((\d+) (\d+) (\d+) \/ ([\d.]+)\)/g, "rgba($1,$2,$3,$4)");
}

/**
 * The rules of a chart with every token filled in, so that they hold without the pages.
 *
 * @param used the classes that the drawing has; a rule for any other is left out. Absent: every rule
 * @throws RangeError for a rule with a token that nobody defines
 */
export function inlineStyle(
  sheets: ChartSheets,
  look: ChartLook,
  used?: ReadonlySet<string>,
): { readonly css: string; readonly paper: string } {
  const tokens = tokensOf(sheets.tokens, look);
  const fill = (text: string): string =>
    olderColour(
      text.replace(/var\((--[\w-]+)\)/g, (_whole, name: string) => {
        const value = tokens.get(name);
        if (value === undefined) throw new RangeError(`no such token: ${name}`);
        return value;
      }),
    );
  const css = rulesFor(sheets.marks, look)
    .filter(([head]) => used === undefined || classNames(head).every((name) => used.has(name)))
    .map(([head, body]) => `${head}{${fill(body).replace(/\s+/g, " ")}}`)
    .join("\n");
  return { css, paper: fill("var(--paper)") };
}
