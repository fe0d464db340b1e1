import type { Hand, SignRule } from "@/lib/domain/handedness";
import type { Field } from "./column-word";
import { parseValue } from "./parse-value";
import type { ReadColumn } from "./read-columns";
import { columnOf, type ImportContext } from "./row-draft";
import { hasRefusedMarks, wordKey } from "./text-key";

const TEXT_LIMIT: Partial<Readonly<Record<Field, number>>> = { alias: 60, note: 2000, film: 500, setAside: 500 };

const HANDS: ReadonlyMap<string, Hand> = new Map([
  ...["right", "r", "rh", "right handed", "right hand"].map((word) => [word, "right"] as const),
  ...["left", "l", "lh", "left handed", "left hand"].map((word) => [word, "left"] as const),
]);

const SIGNS: ReadonlyMap<string, SignRule> = new Map([
  ...["neutral", "away from target", "away", "catalogue"].map((word) => [word, "neutral"] as const),
  ...["picture", "right in the picture", "as in the picture", "to the right"].map((word) => [word, "picture"] as const),
]);

/** Reads the cells of a row that hold no measure; what can't be read is told to the log and comes back as null. */
export class RowCells {
  readonly #context: ImportContext;
  readonly #columns = new Map<Field, ReadColumn | undefined>();

  constructor(context: ImportContext) {
    this.#context = context;
  }

  #cell(cells: readonly string[], field: Field): { readonly column: ReadColumn; readonly text: string } | null {
    if (!this.#columns.has(field)) this.#columns.set(field, columnOf(this.#context, field));
    const column = this.#columns.get(field);
    const text = column ? (cells[column.at] ?? "").trim() : "";
    return column && text !== "" ? { column, text } : null;
  }

  #refuse(code: string, row: number, cell: { column: ReadColumn; text: string }, args = {}): null {
    this.#context.log.issue({ code, row, column: cell.column.header, value: cell.text, args, at: cell.column.at });
    return null;
  }

  text(row: number, cells: readonly string[], field: Field): string | null {
    const cell = this.#cell(cells, field);
    if (!cell) return null;
    if (hasRefusedMarks(cell.text)) return this.#refuse("hidden-mark", row, cell);
    const limit = TEXT_LIMIT[field] ?? 120;
    return cell.text.length > limit ? this.#refuse("too-long", row, cell, { limit }) : cell.text;
  }

  /** Whether a text stands there that `text` refused. */
  isRefused(cells: readonly string[], field: Field): boolean {
    const cell = this.#cell(cells, field);
    return cell !== null && (hasRefusedMarks(cell.text) || cell.text.length > (TEXT_LIMIT[field] ?? 120));
  }

  isFilled(cells: readonly string[], field: Field): boolean {
    return this.#cell(cells, field) !== null;
  }

  whole(row: number, cells: readonly string[], field: Field, low: number, high: number): number | null {
    const cell = this.#cell(cells, field);
    if (!cell) return null;
    const value = /^\d{1,6}(?:[.,]0+)?$/.test(cell.text) ? Number.parseInt(cell.text, 10) : Number.NaN;
    if (value >= low && value <= high) return value;
    return this.#refuse("not-a-count", row, cell, { low, high });
  }

  stanceWidthCm(row: number, cells: readonly string[]): number | null {
    const cell = this.#cell(cells, "stanceWidth");
    if (!cell) return null;
    const parsed = parseValue(cell.text);
    if (parsed.kind === "not-measurable") return null;
    const unit = parsed.kind === "number" ? (parsed.unit ?? cell.column.unit ?? "cm") : "cm";
    const scale = unit === "cm" ? 1 : unit === "mm" ? 0.1 : unit === "inch" ? 2.54 : Number.NaN;
    const width = parsed.kind === "number" ? parsed.value * scale : Number.NaN;
    if (!(width >= 10 && width <= 120)) return this.#refuse("not-a-stance-width", row, cell);
    if (unit !== "cm") this.#context.log.note("stance-width-converted", row, cell.column.header);
    return width;
  }

  /** Sd of a camera error; `±` before it is taken as 95 of 100. */
  cameraSd(row: number, cells: readonly string[], column: ReadColumn): number | null {
    const text = (cells[column.at] ?? "").trim();
    if (text === "") return null;
    const doubled = /^(?:±|\+\/-)\s*(.*)$/.exec(text);
    const parsed = parseValue(doubled?.[1] ?? text);
    if (parsed.kind === "not-measurable") return null;
    if (parsed.kind !== "number" || parsed.value < 0 || parsed.value > 1000) {
      return this.#refuse("not-an-sd", row, { column, text });
    }
    if (!doubled) return parsed.value;
    this.#context.log.note("sd-from-plus-minus", row, column.header);
    return parsed.value / 1.96;
  }

  hand(row: number, cells: readonly string[]): Hand | null {
    const cell = this.#cell(cells, "hand");
    return cell ? (HANDS.get(wordKey(cell.text)) ?? this.#refuse("not-a-hand", row, cell)) : null;
  }

  sign(row: number, cells: readonly string[]): SignRule | null {
    const cell = this.#cell(cells, "sign");
    return cell ? (SIGNS.get(wordKey(cell.text)) ?? this.#refuse("not-a-sign", row, cell)) : null;
  }

  refuseStrikes(row: number, cells: readonly string[]): void {
    const cell = this.#cell(cells, "solid");
    if (cell) this.#refuse("more-solid-than-balls", row, cell);
  }

  setAside(row: number, cells: readonly string[]): string | null {
    const text = this.text(row, cells, "setAside");
    return text === null || ["no", "n", "false", "0", "-"].includes(text.toLowerCase()) ? null : text;
  }
}
