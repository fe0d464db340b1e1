import type { FamilyFile } from "@/lib/report/tell-model";
import marks from "../chart-marks/chart-marks.module.css";
import { familyDrawing } from "../family/picture";
import picture from "../family/picture.module.css";
import { drawnParts } from "./drawing-file";
import { type ChartLook, inlineStyle } from "./inline-style";
import { writeMarkup } from "./write-markup";

/** The style sheets of a file as text, and what stands in its policy for a style. */
interface FileSheets {
  readonly tokens: string;
  readonly file: string;
  readonly marks: string;
  readonly picture: string;
  readonly digest: (style: string) => string;
}

const ID = "season";

/** Where the drawing goes: signs that no text holds, because a text with them is refused. */
const PLACE = "\u2063picture\u2063";

function Lines({ lines }: { readonly lines: readonly string[] }) {
  return (
    <>
      {lines.map((line) => (
        <p key={line}>{line}</p>
      ))}
    </>
  );
}

/** The picture as it stands on a phone, as markup with the names of its own style sheets. */
function drawnPicture({ picture: model }: FamilyFile, sheets: FileSheets) {
  if (model === null) return null;
  const { parts, width, height } = familyDrawing(model, "phone", ID);
  const drawn = drawnParts(
    <svg viewBox={`0 0 ${width} ${height}`} role="img" aria-labelledby={`${ID}-title ${ID}-desc`}>
      <title id={`${ID}-title`}>{model.heading}</title>
      <desc id={`${ID}-desc`}>{model.summary}</desc>
      {parts}
    </svg>,
    [
      { text: sheets.marks, names: marks, prefix: "" },
      { text: sheets.picture, names: picture, prefix: "picture-" },
    ],
  );
  const around = writeMarkup(
    <section>
      <h2>{model.heading}</h2>
      {PLACE}
      <Lines lines={model.reads} />
    </section>,
  );
  return { ...drawn, markup: around.replace(PLACE, () => drawn.markup) };
}

function Body({ file }: { readonly file: FamilyFile }) {
  return (
    <main>
      <h1>{file.heading}</h1>
      {PLACE}
      {file.parts.map((part) => (
        <section key={part.heading}>
          <h2>{part.heading}</h2>
          <Lines lines={part.lines} />
        </section>
      ))}
      {file.numbers === null ? null : (
        <details>
          <summary>{file.numbers.heading}</summary>
          <Lines lines={file.numbers.lines} />
        </details>
      )}
      <footer>
        <Lines lines={file.foot} />
      </footer>
    </main>
  );
}

/**
 * What a family is told as one page that stands alone: its style is in it, nothing runs, nothing is fetched, and its own policy
 * forbids both. The same content is the same text, byte by byte.
 */
export function familyFile(file: FamilyFile, sheets: FileSheets): string {
  const drawn = drawnPicture(file, sheets);
  const sheet = { tokens: sheets.tokens, marks: [sheets.file, drawn?.sheet ?? ""].join("\n") };
  const styled = (look: ChartLook): string => inlineStyle(sheet, look, drawn?.used ?? new Set()).css;
  const style = `${styled("colour")}\n@media print{\n${styled("one-colour")}\n}`;
  const policy = `default-src 'none'; style-src 'sha256-${sheets.digest(style)}'; base-uri 'none'; form-action 'none'`;
  return [
    "<!doctype html>",
    `<html lang="${file.language}">`,
    "<head>",
    '<meta charset="utf-8">',
    `<meta http-equiv="Content-Security-Policy" content="${policy}">`,
    '<meta name="viewport" content="width=device-width, initial-scale=1">',
    '<meta name="referrer" content="no-referrer">',
    '<meta name="robots" content="noindex">',
    writeMarkup(<title>{file.title}</title>),
    `<style>${style}</style>`,
    "</head>",
    `<body>${writeMarkup(<Body file={file} />).replace(PLACE, () => drawn?.markup ?? "")}</body>`,
    "</html>",
    "",
  ].join("\n");
}
