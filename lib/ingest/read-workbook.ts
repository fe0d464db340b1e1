import { zipSync } from "fflate";
import { readSheet } from "read-excel-file/universal";
import { type OpenedZip, readZip, type ZipFault } from "./read-zip";
import { type CellPlace, scanSheet } from "./scan-sheet";
import { SHEET_LIMIT, SPAN_LIMIT } from "./workbook-limits";

/** One sheet with something in it, every cell as text. */
export interface SheetTable {
  readonly name: string;
  readonly seen: "shown" | "hidden";
  /** By row of the sheet, the first at 0; a number as the workbook holds it, a date year first. */
  readonly rows: readonly (readonly string[])[];
  /** Cells whose value a formula worked out when the workbook was last saved. */
  readonly formulas: readonly CellPlace[];
}

/** Why a workbook is not read; message `import.issue.workbook` chooses by it. */
export type WorkbookFault =
  | ZipFault
  | "not-a-workbook"
  | "entities"
  | "far-cell"
  | "span"
  | "many-sheets"
  | "bad-cell"
  | "heavy";

export type ReadWorkbook =
  | { readonly kind: "ok"; readonly sheets: readonly SheetTable[] }
  | { readonly kind: "refused"; readonly why: WorkbookFault; readonly where: string };

interface SheetEntry {
  readonly name: string;
  readonly seen: "shown" | "hidden";
  readonly part: string;
  /** 1-based place among the workbook's sheets. */
  readonly place: number;
}

type Texts = ReadonlyMap<string, string>;

const BOOK = "xl/workbook.xml";
const RELATIONS = "xl/_rels/workbook.xml.rels";
const DAY_MS = 86_400_000;

const refused = (why: WorkbookFault, where = ""): ReadWorkbook => ({ kind: "refused", why, where: where.slice(0, 80) });

const wanted = (name: string): boolean => name === RELATIONS || (/^xl\/[^_]/.test(name) && name.endsWith(".xml"));

function plainText(text: string): string {
  const named: Readonly<Record<string, string>> = { amp: "&", lt: "<", gt: ">", quot: '"', apos: "'" };
  return text.replace(/&(?:#x([\da-f]{1,6})|#(\d{1,7})|(amp|lt|gt|quot|apos));/gi, (whole, hex, decimal, name) => {
    if (name) return named[name.toLowerCase()] ?? whole;
    const code = Number.parseInt(hex ?? decimal, hex ? 16 : 10);
    return code <= 0x10ffff ? String.fromCodePoint(code) : whole;
  });
}

function attributesOf(tag: string): ReadonlyMap<string, string> {
  const found = new Map<string, string>();
  for (const [, name, double, single] of tag.matchAll(/(?:[\w.-]+:)?([\w.-]+)\s*=\s*(?:"([^"]*)"|'([^']*)')/g))
    if (name) found.set(name, plainText(double ?? single ?? ""));
  return found;
}

const tagsOf = (xml: string, name: string): readonly ReadonlyMap<string, string>[] =>
  [...xml.matchAll(new RegExp(`<(?:[\\w.-]+:)?${name}(\\s[^>]*)>`, "g"))].map(([, text]) => attributesOf(text ?? ""));

/** The sheets that the workbook names, with the part that holds each. */
function listSheets(book: string, relations: string): readonly SheetEntry[] {
  const parts = new Map(
    tagsOf(relations, "Relationship").flatMap((tag) => {
      const [id, type, target] = [tag.get("Id"), tag.get("Type") ?? "", tag.get("Target") ?? ""];
      // What lies outside the file is never fetched.
      if (!id || !type.endsWith("/worksheet") || tag.get("TargetMode") === "External") return [];
      return [[id, target.startsWith("/") ? target.slice(1) : `xl/${target}`] as const];
    }),
  );
  const named = tagsOf(book, "sheet").filter((tag) => tag.get("name"));
  return named.flatMap((tag, index) => {
    const part = parts.get(tag.get("id") ?? "");
    const seen = /hidden/i.test(tag.get("state") ?? "") ? "hidden" : "shown";
    return part === undefined ? [] : [{ name: tag.get("name") ?? "", seen, part, place: index + 1 } as const];
  });
}

function cellText(value: unknown): string {
  if (value === null || value === undefined) return "";
  if (typeof value === "boolean") return value ? "TRUE" : "FALSE";
  if (!(value instanceof Date)) return String(value);
  if (Number.isNaN(value.getTime())) return "#VALUE!";
  const whole = value.getTime() % DAY_MS === 0;
  return whole ? value.toISOString().slice(0, 10) : value.toISOString().slice(0, 19).replace("T", " ");
}

/** The parts that sheets are read from, as text; a part that breaks off, lies or is no UTF-8 refuses the workbook. */
function openTexts(zip: Extract<OpenedZip, { kind: "ok" }>): Texts | ReadWorkbook {
  const texts = new Map<string, string>();
  for (const name of zip.names.filter(wanted)) {
    const part = zip.open(name);
    if (typeof part === "string") return refused(part, name);
    if (part === null) continue;
    try {
      texts.set(name, new TextDecoder("utf-8", { fatal: true }).decode(part));
    } catch {
      return refused("broken", name);
    }
  }
  return texts;
}

/** A workbook of one sheet, not packed: the reader is given only what was looked at before. */
function oneSheet(texts: Texts, part: string): ArrayBuffer {
  const kept = [
    BOOK,
    RELATIONS,
    part,
    ...[...texts.keys()].filter((name) => /(?:sharedStrings|styles)\.xml$/i.test(name)),
  ];
  const encoder = new TextEncoder();
  const entries = Object.fromEntries(kept.map((name) => [name, encoder.encode(texts.get(name) ?? "")] as const));
  const zip = zipSync(entries, { level: 0 });
  return zip.buffer.slice(zip.byteOffset, zip.byteOffset + zip.byteLength) as ArrayBuffer;
}

/**
 * A workbook's sheets as texts. To be called in a worker whose memory and time are capped. Refuses what no program for
 * sheets writes before it unpacks anything; reads no other file and no network.
 *
 * @param bytes the file
 * @returns every sheet that holds something, in the workbook's order; or why none is read, and where
 */
export async function readWorkbook(bytes: Uint8Array): Promise<ReadWorkbook> {
  const zip = readZip(bytes, wanted);
  if (zip.kind === "refused") return refused(zip.why);
  if (!zip.names.includes(BOOK) || !zip.names.includes(RELATIONS)) return refused("not-a-workbook");
  const texts = openTexts(zip);
  if (!(texts instanceof Map)) return texts as ReadWorkbook;
  for (const [name, text] of texts) if (/<!(?:DOCTYPE|ENTITY)/i.test(text)) return refused("entities", name);
  const entries = listSheets(texts.get(BOOK) ?? "", texts.get(RELATIONS) ?? "");
  if (entries.length > SHEET_LIMIT) return refused("many-sheets", String(entries.length));
  const sheets: SheetTable[] = [];
  let span = 0;
  for (const { name, seen, part, place } of entries) {
    const xml = texts.get(part);
    if (xml === undefined) return refused("broken", part);
    const scanned = scanSheet(xml);
    if (scanned.kind === "refused") return refused(scanned.why, `${name} ${scanned.cell}`.trim());
    span += scanned.rows * scanned.columns;
    if (span > SPAN_LIMIT) return refused("span", name);
    if (scanned.filled === 0) continue;
    try {
      const data = await readSheet(oneSheet(texts, part), place, { trim: false, parseNumber: (text) => text });
      const rows = data.map((row) => row.map(cellText));
      for (const { row, at, text } of scanned.errors) {
        while (rows.length < row) rows.push([]);
        const cells = rows[row - 1] ?? [];
        while (cells.length < at) cells.push("");
        cells[at] = text;
      }
      sheets.push({ name, seen, rows, formulas: scanned.formulas });
    } catch (error) {
      const cell = /row (\d+),? col (\d+)/.exec(error instanceof Error ? error.message : "");
      return cell ? refused("bad-cell", `${name}, ${cell[1]}/${cell[2]}`) : refused("broken", name);
    }
  }
  return { kind: "ok", sheets };
}
