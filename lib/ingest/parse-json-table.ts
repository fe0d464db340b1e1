import { COLUMN_LIMIT, type CsvRecord, ROW_LIMIT } from "./parse-csv";

/** Why a JSON text is not read; message `import.issue.json` chooses by it. */
export type JsonFault =
  | "syntax"
  | "not-a-list"
  | "not-an-object"
  | "nested"
  | "doubled"
  | "proto"
  | "many-columns"
  | "many-rows";

export type JsonTable =
  | { readonly kind: "ok"; readonly header: CsvRecord; readonly records: readonly CsvRecord[] }
  | {
      readonly kind: "refused";
      readonly why: JsonFault;
      /** The object at which reading ended, counted from 1; 0: before the first. */
      readonly row: number;
      /** 1-based line of the text. */
      readonly line: number;
      readonly name: string;
    };

const NUMBER = /-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?/y;
const WORD = /true|false|null/y;
const BLANK = /[ \t\n\r]*/y;

const FORBIDDEN = new Set(["__proto__", "constructor", "prototype"]);

class JsonFailure extends Error {
  readonly why: JsonFault;
  readonly field: string;
  constructor(why: JsonFault, field = "") {
    super(why);
    this.why = why;
    this.field = field;
  }
}

/** Reads the few shapes that a list of flat objects has; never descends, so that no depth costs anything. */
class JsonReader {
  at = 0;
  readonly #text: string;

  constructor(text: string) {
    this.#text = text;
  }

  #match(pattern: RegExp): string | null {
    pattern.lastIndex = this.at;
    const found = pattern.exec(this.#text)?.[0] ?? null;
    if (found !== null) this.at += found.length;
    return found;
  }

  /** Passes over blanks and takes the sign when it stands there. */
  take(sign: string): boolean {
    this.#match(BLANK);
    if (this.#text[this.at] !== sign) return false;
    this.at++;
    return true;
  }

  isAtEnd(): boolean {
    this.#match(BLANK);
    return this.at >= this.#text.length;
  }

  string(): string {
    this.#match(BLANK);
    if (this.#text[this.at] !== '"') throw new JsonFailure("syntax");
    // By hand and not by a pattern: a text of ten million letters must not fill a pattern's stack.
    let end = this.at + 1;
    while (this.#text[end] !== '"') {
      if (end >= this.#text.length) throw new JsonFailure("syntax");
      end += this.#text[end] === "\\" ? 2 : 1;
    }
    const whole = this.#text.slice(this.at, end + 1);
    this.at = end + 1;
    try {
      return JSON.parse(whole) as string;
    } catch {
      throw new JsonFailure("syntax");
    }
  }

  /** A plain value as text: a number with every digit as it stands, null as blank. */
  value(field: string): string {
    this.#match(BLANK);
    const next = this.#text[this.at];
    if (next === '"') return this.string();
    if (next === "{" || next === "[") throw new JsonFailure("nested", field);
    const found = this.#match(NUMBER) ?? this.#match(WORD);
    if (found === null) throw new JsonFailure("syntax", field);
    return found === "null" ? "" : found;
  }
}

function readObject(reader: JsonReader, columns: Map<string, number>): string[] {
  if (!reader.take("{")) throw new JsonFailure("not-an-object");
  const cells: string[] = [];
  const seen = new Set<string>();
  if (reader.take("}")) return cells;
  do {
    const name = reader.string().normalize("NFC");
    if (FORBIDDEN.has(name)) throw new JsonFailure("proto", name);
    if (seen.has(name)) throw new JsonFailure("doubled", name);
    seen.add(name);
    if (!reader.take(":")) throw new JsonFailure("syntax", name);
    const place = columns.get(name) ?? columns.size;
    columns.set(name, place);
    if (columns.size > COLUMN_LIMIT) throw new JsonFailure("many-columns", name);
    cells[place] = reader.value(name).normalize("NFC").replace(/\r\n?/g, "\n");
  } while (reader.take(","));
  if (!reader.take("}")) throw new JsonFailure("syntax");
  return cells;
}

/**
 * A JSON list of flat objects as a table: the names of all objects are the heads, an object is a row. Numbers keep
 * their digits. One name twice in an object, names of a language's own, and anything nested refuse the whole text,
 * since two programs would read it in two ways.
 */
export function parseJsonTable(text: string): JsonTable {
  const reader = new JsonReader(text);
  const columns = new Map<string, number>();
  const rows: string[][] = [];
  let reading = 0;
  try {
    if (!reader.take("[")) throw new JsonFailure("not-a-list");
    if (!reader.take("]")) {
      do {
        reading = rows.length + 1;
        if (reading > ROW_LIMIT) throw new JsonFailure("many-rows");
        rows.push(readObject(reader, columns));
      } while (reader.take(","));
      if (!reader.take("]")) throw new JsonFailure("syntax");
    }
    if (!reader.isAtEnd()) throw new JsonFailure("syntax");
  } catch (error) {
    if (!(error instanceof JsonFailure)) throw error;
    const line = text.slice(0, reader.at).split("\n").length;
    return { kind: "refused", why: error.why, row: reading, line, name: error.field };
  }
  const header = { row: 0, cells: [...columns.keys()] };
  const records = rows.map((cells, at) => ({ row: at + 1, cells: header.cells.map((_, place) => cells[place] ?? "") }));
  return { kind: "ok", header, records: records.filter(({ cells }) => cells.some((cell) => cell.trim() !== "")) };
}
