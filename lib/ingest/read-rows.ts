import type { Fundamental } from "@/lib/domain/fundamental";
import { closestWord } from "./closest-word";
import { fundamentalWords } from "./column-word";
import { option } from "./import-log";
import type { CsvRecord } from "./parse-csv";
import { isConvertible, parseUnit } from "./parse-unit";
import { type ParsedValue, parseValue } from "./parse-value";
import type { ReadColumn } from "./read-columns";
import { RowCells } from "./row-cells";
import { columnOf, groupBy, type ImportContext, type ReadingDraft, type RowDraft } from "./row-draft";
import { questionKey, shownValue, wordKey } from "./text-key";

/** More misspelt names than this are refused, not asked about one by one. */
const QUESTION_LIMIT = 50;

/** Rows between two words on how far the reading is. */
const PROGRESS_ROWS = 1000;
/** Half a letter of UTF-16: no text holds it, and it could not be stored as it is. */
const NO_TEXT = /\p{Surrogate}/u;

/** The rows of a file with their plain cells read; days, students and clubs are still texts. */
export function readRows(
  header: CsvRecord,
  records: readonly CsvRecord[],
  context: ImportContext,
): readonly RowDraft[] {
  const { log, columns } = context;
  const reader = new RowCells(context);
  const width = header.cells.length;
  const headerText = header.cells.join("\u0000");
  const seen = new Map<string, number>();
  const hasSwing = columnOf(context, "swing") !== undefined;
  const drafts: RowDraft[] = [];
  for (const [read, { row, cells }] of records.entries()) {
    if (read % PROGRESS_ROWS === 0) context.input.onProgress?.(read, records.length);
    const text = cells.join("\u0000");
    if (text === headerText) {
      log.note("header-again", row);
      continue;
    }
    // Without swing numbers two equal rows may be two swings.
    const before = hasSwing ? seen.get(text) : undefined;
    if (before !== undefined) {
      log.note("duplicate-row", row, null, { first: before }, String(before));
      continue;
    }
    if (hasSwing) seen.set(text, row);
    const draft = readRow(row, cells, reader, columns);
    if (cells.length > width && cells.slice(width).some((cell) => cell.trim() !== "")) {
      log.issue({
        code: "too-many-cells",
        row,
        value: cells.slice(width).join(" · "),
        args: { cells: cells.length, columns: width },
      });
      draft.state = "refused";
    } else if (cells.length < width) log.note("short-row", row);
    const broken = cells.find((cell) => cell.includes("\u0000") || NO_TEXT.test(cell));
    if (broken !== undefined) {
      log.issue({ code: "nul-sign", row, value: broken });
      draft.state = "refused";
    }
    if (reader.isRefused(cells, "alias") || reader.isRefused(cells, "circumstance")) draft.state = "refused";
    if (hasSwing && draft.swing === null && reader.isFilled(cells, "swing")) draft.state = "refused";
    drafts.push(draft);
  }
  context.input.onProgress?.(records.length, records.length);
  readReadings(drafts, context);
  return drafts;
}

function readRow(row: number, cells: readonly string[], reader: RowCells, columns: readonly ReadColumn[]): RowDraft {
  const cameraSds = columns
    .filter((column) => column.field === "cameraSd")
    .map((column) => ({ fundamental: column.fundamental, sd: reader.cameraSd(row, cells, column) }));
  let solid = reader.whole(row, cells, "solid", 0, 2000);
  const balls = reader.whole(row, cells, "balls", 0, 2000);
  if (solid !== null && balls !== null && solid > balls) {
    reader.refuseStrikes(row, cells);
    solid = null;
  }
  return {
    row,
    cells,
    state: "alive",
    aliasText: reader.text(row, cells, "alias") ?? "",
    alias: "",
    hand: null,
    handInFile: reader.hand(row, cells),
    birthYearInFile: reader.whole(row, cells, "birthYear", 1900, 2100),
    day: "",
    sequence: reader.whole(row, cells, "sequence", 1, 99),
    swing: reader.whole(row, cells, "swing", 1, 999),
    club: reader.text(row, cells, "club"),
    clubGroupText: reader.text(row, cells, "clubGroup"),
    clubGroup: null,
    circumstanceText: reader.text(row, cells, "circumstance"),
    circumstance: null,
    reader: reader.text(row, cells, "reader"),
    aid: reader.text(row, cells, "aid"),
    stanceWidthCm: reader.stanceWidthCm(row, cells),
    daysSincePractice: reader.whole(row, cells, "daysSincePractice", 0, 3650),
    solid,
    balls,
    setAsideReason: reader.setAside(row, cells),
    placementText: reader.text(row, cells, "placement"),
    film: reader.text(row, cells, "film"),
    note: reader.text(row, cells, "note"),
    signInFile: reader.sign(row, cells),
    // A bare camera sd is that of the row's fundamental; `readReadings` sees to it.
    cameraSds: cameraSds.flatMap(({ fundamental, sd }) => (fundamental && sd !== null ? [{ fundamental, sd }] : [])),
    bareCameraSd: cameraSds.find(({ fundamental }) => fundamental === null)?.sd ?? null,
    readings: [],
  };
}

function readReadings(drafts: readonly RowDraft[], context: ImportContext): void {
  const parsed = new Map<string, ParsedValue>();
  const valueIn = (text: string): ParsedValue => {
    const kept = parsed.get(text);
    if (kept) return kept;
    const value = parseValue(text);
    if (parsed.size < 50_000) parsed.set(text, value);
    return value;
  };
  const measures = context.columns.flatMap((column) =>
    column.fundamental && column.field === "measure" ? [{ column, fundamental: column.fundamental }] : [],
  );
  const valueColumn = columnOf(context, "value");
  const reading = (
    row: RowDraft,
    fundamental: Fundamental,
    column: ReadColumn,
    unitText: string,
  ): ReadingDraft | null => {
    const typed = row.cells[column.at] ?? "";
    const value = valueIn(typed);
    if (value.kind === "blank") return null;
    const unitInRow = unitText === "" ? null : parseUnit(unitText);
    // A unit chosen for a column of several fundamentals holds for those that can be written in it.
    const ofColumn =
      column.field === "value" && column.unit !== null && !isConvertible(column.unit, fundamental.unit)
        ? null
        : column.unit;
    const unit = (value.kind === "number" || value.kind === "either" ? value.unit : null) ?? unitInRow ?? ofColumn;
    return { row, fundamental, column, typed, parsed: value, unit, value: null, signRule: "neutral", state: "alive" };
  };
  if (context.form === "wide") {
    const sdColumn = context.columns.find((column) => column.field === "cameraSd" && column.fundamental === null);
    for (const row of drafts) {
      row.readings = measures.flatMap(({ column, fundamental }) => reading(row, fundamental, column, "") ?? []);
      if (row.bareCameraSd === null) continue;
      const [only] = measures;
      if (only && measures.length === 1) row.cameraSds.push({ fundamental: only.fundamental, sd: row.bareCameraSd });
      else
        context.log.issue({
          code: "whose-camera-sd",
          row: row.row,
          column: sdColumn?.header,
          value: null,
          at: sdColumn?.at,
        });
    }
  } else if (valueColumn) {
    const unitColumn = columnOf(context, "unit");
    settleFundamentals(drafts, context, (row, fundamental) => {
      if (fundamental.derivedFrom !== null) {
        context.log.note(
          "derived-left-out",
          row.row,
          valueColumn.header,
          { fundamental: fundamental.id },
          fundamental.id,
        );
        return;
      }
      const unitText = unitColumn ? (row.cells[unitColumn.at] ?? "").trim() : "";
      if (unitText !== "" && parseUnit(unitText) === null) {
        context.log.issue({
          code: "unknown-unit",
          row: row.row,
          column: unitColumn?.header,
          value: unitText,
          args: { unit: shownValue(unitText) },
          at: unitColumn?.at,
        });
        return;
      }
      const found = reading(row, fundamental, valueColumn, unitText);
      row.readings = found ? [found] : [];
      if (row.bareCameraSd !== null) row.cameraSds.push({ fundamental, sd: row.bareCameraSd });
    });
  }
}

/** In long form: finds each row's fundamental, asks once for each word that nobody knows. */
function settleFundamentals(
  drafts: readonly RowDraft[],
  context: ImportContext,
  accept: (row: RowDraft, fundamental: Fundamental) => void,
): void {
  const { log } = context;
  const column = columnOf(context, "fundamental");
  if (!column) return;
  const words = fundamentalWords(context.input.fundamentals);
  const asking: RowDraft[] = [];
  for (const row of drafts) {
    const text = (row.cells[column.at] ?? "").trim();
    const found = words.get(wordKey(text));
    if (found) accept(row, found);
    else if (text !== "") asking.push(row);
    else log.issue({ code: "fundamental-missing", row: row.row, column: column.header, at: column.at });
  }
  let asked = 0;
  for (const [key, rows] of groupBy(asking, (row) => wordKey(row.cells[column.at] ?? ""))) {
    const first = rows[0]?.cells[column.at]?.trim() ?? "";
    const near = closestWord(key, words);
    const refuse = (row: RowDraft) =>
      log.issue({ code: "unknown-fundamental", row: row.row, column: column.header, value: first, at: column.at });
    if (!near || ++asked > QUESTION_LIMIT) {
      rows.forEach(refuse);
      continue;
    }
    const answer = log.ask(
      {
        id: `fundamental:${questionKey(key)}`,
        code: "fundamental-close",
        args: { value: first, fundamental: near.id },
        options: [option("read-as-fundamental", { fundamental: near.id }), option("leave-out")],
        at: column.at,
      },
      rows.map((row) => row.row),
    );
    for (const row of rows) {
      if (answer?.option === "read-as-fundamental") {
        log.note("fundamental-read-as", row.row, column.header, { value: first, fundamental: near.id }, key);
        accept(row, near);
      } else if (answer) log.note("left-out", row.row, column.header, { value: first }, key);
    }
  }
}
