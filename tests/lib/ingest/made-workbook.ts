import { type Zippable, zipSync } from "fflate";

/** A cell: a text, a number or another kind as the part has it, a formula with what it gave, or nothing. */
export type MadeCell =
  | string
  | number
  | null
  | { readonly xml: string }
  | { readonly raw: string; readonly kind?: string; readonly style?: number; readonly formula?: string };

export interface MadeSheet {
  readonly name: string;
  readonly rows: readonly (readonly MadeCell[])[];
  readonly state?: "hidden" | "veryHidden";
}

/** Styles of the workbook: 0 plain, 1 a built-in date (14), 2 a written date, 3 two decimals, 4 a date with the hour. */
export const STYLE = { plain: 0, date: 1, writtenDate: 2, decimals: 3, dateTime: 4 } as const;

export const escaped = (text: string): string =>
  text.replace(/[&<>"]/g, (sign) => ({ "&": "&amp;", "<": "&lt;", ">": "&gt;", '"': "&quot;" })[sign] ?? sign);

export function columnLetters(at: number): string {
  return at < 26 ? String.fromCharCode(65 + at) : columnLetters(Math.floor(at / 26) - 1) + columnLetters(at % 26);
}

function cellXml(cell: MadeCell, address: string): string {
  if (cell === null || cell === "") return "";
  if (typeof cell === "string")
    return `<c r="${address}" t="inlineStr"><is><t xml:space="preserve">${escaped(cell)}</t></is></c>`;
  if (typeof cell === "number") return `<c r="${address}"><v>${cell}</v></c>`;
  if ("xml" in cell) return cell.xml.replaceAll("@", address);
  const formula = cell.formula === undefined ? "" : `<f>${escaped(cell.formula)}</f>`;
  const kind = cell.kind === undefined ? "" : ` t="${cell.kind}"`;
  return `<c r="${address}" s="${cell.style ?? 0}"${kind}>${formula}<v>${escaped(cell.raw)}</v></c>`;
}

export function sheetXml(rows: MadeSheet["rows"]): string {
  const body = rows
    .map(
      (cells, at) =>
        `<row r="${at + 1}">${cells.map((cell, place) => cellXml(cell, `${columnLetters(place)}${at + 1}`)).join("")}</row>`,
    )
    .join("");
  return `<?xml version="1.0" encoding="UTF-8" standalone="yes"?><worksheet xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><sheetData>${body}</sheetData></worksheet>`;
}

const STYLES = `<?xml version="1.0" encoding="UTF-8"?><styleSheet xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><numFmts count="1"><numFmt numFmtId="164" formatCode="d\\ mmm\\ yyyy"/></numFmts><fonts count="1"><font/></fonts><fills count="1"><fill/></fills><borders count="1"><border/></borders><cellStyleXfs count="1"><xf/></cellStyleXfs><cellXfs count="5"><xf numFmtId="0" xfId="0"/><xf numFmtId="14" xfId="0" applyNumberFormat="1"/><xf numFmtId="164" xfId="0" applyNumberFormat="1"/><xf numFmtId="2" xfId="0" applyNumberFormat="1"/><xf numFmtId="22" xfId="0" applyNumberFormat="1"/></cellXfs></styleSheet>`;

/** The parts of a workbook as ECMA-376 part 1 lays them out (18.2 workbook, 18.3 worksheets, 18.8 styles). */
export function workbookParts(sheets: readonly MadeSheet[], epoch: 1900 | 1904 = 1900): Record<string, string> {
  const parts: Record<string, string> = {
    "[Content_Types].xml": `<?xml version="1.0" encoding="UTF-8"?><Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types"><Default Extension="xml" ContentType="application/xml"/><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/><Override PartName="/xl/workbook.xml" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.sheet.main+xml"/>${sheets.map((_, at) => `<Override PartName="/xl/worksheets/sheet${at + 1}.xml" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.worksheet+xml"/>`).join("")}<Override PartName="/xl/styles.xml" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.styles+xml"/></Types>`,
    "_rels/.rels": `<?xml version="1.0" encoding="UTF-8"?><Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"><Relationship Id="rId1" Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/officeDocument" Target="xl/workbook.xml"/></Relationships>`,
    "xl/workbook.xml": `<?xml version="1.0" encoding="UTF-8"?><workbook xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main" xmlns:r="http://schemas.openxmlformats.org/officeDocument/2006/relationships"><workbookPr${epoch === 1904 ? ' date1904="1"' : ""}/><sheets>${sheets.map(({ name, state }, at) => `<sheet name="${escaped(name)}" sheetId="${at + 1}"${state ? ` state="${state}"` : ""} r:id="rId${at + 1}"/>`).join("")}</sheets></workbook>`,
    "xl/_rels/workbook.xml.rels": `<?xml version="1.0" encoding="UTF-8"?><Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships">${sheets.map((_, at) => `<Relationship Id="rId${at + 1}" Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/worksheet" Target="worksheets/sheet${at + 1}.xml"/>`).join("")}<Relationship Id="rStyles" Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/styles" Target="styles.xml"/></Relationships>`,
    "xl/styles.xml": STYLES,
  };
  sheets.forEach(({ rows }, at) => {
    parts[`xl/worksheets/sheet${at + 1}.xml`] = sheetXml(rows);
  });
  return parts;
}

export function zipParts(parts: Readonly<Record<string, string>>): Uint8Array {
  const encoder = new TextEncoder();
  const entries: Zippable = {};
  for (const [name, text] of Object.entries(parts)) entries[name] = encoder.encode(text);
  return zipSync(entries, { level: 6, mtime: "2026-01-01T00:00:00" });
}

/** A workbook's bytes. */
export function makeWorkbook(sheets: readonly MadeSheet[], epoch: 1900 | 1904 = 1900): Uint8Array {
  return zipParts(workbookParts(sheets, epoch));
}
