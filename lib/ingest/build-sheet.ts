import type { ImportIssue, ImportQuestion, ImportSheetRow } from "./import-preview";
import type { CsvRecord } from "./parse-csv";
import { shownValue } from "./text-key";

const SHOWN_ROWS = 40;
const SHOWN_COLUMNS = 40;

interface Marked {
  readonly rows: readonly number[];
  readonly at: number | null;
  readonly kind: "issue" | "question";
  readonly index: number;
}

function holds(rows: readonly number[], row: number): boolean {
  let [low, high] = [0, rows.length - 1];
  while (low <= high) {
    const middle = (low + high) >> 1;
    const here = rows[middle] ?? 0;
    if (here === row) return true;
    if (here < row) low = middle + 1;
    else high = middle - 1;
  }
  return false;
}

/** The rows of a file to show: its first three, and the first ones of everything that is asked or refused. */
export function buildSheet(
  records: readonly CsvRecord[],
  issues: readonly ImportIssue[],
  issuePlaces: readonly (number | null)[],
  questions: readonly ImportQuestion[],
  questionPlaces: readonly (number | null)[],
): readonly ImportSheetRow[] {
  const marked: Marked[] = [
    ...questions.map(({ rows }, index) => ({
      rows,
      at: questionPlaces[index] ?? null,
      kind: "question" as const,
      index,
    })),
    ...issues.map(({ rows }, index) => ({ rows, at: issuePlaces[index] ?? null, kind: "issue" as const, index })),
  ];
  const shown = new Set(records.slice(0, 3).map(({ row }) => row));
  for (const depth of [0, 1]) {
    for (const { rows } of marked) {
      const row = rows[depth];
      if (row !== undefined && shown.size < SHOWN_ROWS) shown.add(row);
    }
  }
  return records
    .filter(({ row }) => shown.has(row))
    .map(({ row, cells }) => ({
      row,
      cells: cells.slice(0, SHOWN_COLUMNS).map(shownValue),
      marks: marked.flatMap(({ rows, at, kind, index }) =>
        at !== null && holds(rows, row) ? [{ place: at + 1, kind, index }] : [],
      ),
    }));
}
