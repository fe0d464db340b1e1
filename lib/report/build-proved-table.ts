import type { Words } from "@/lib/words/catalogue";
import type { TableModel } from "./basic-model";
import type { RosterPage } from "./roster-model";

const COLUMNS = ["verdict", "student", "fundamental", "levels", "size", "happened", "sure", "band"] as const;

/** The brief on top of the roster as a table of plain cells, in the order of the page; who and what stand in two columns. */
export function buildProvedTable(words: Words, proved: RosterPage["proved"]): TableModel {
  return {
    caption: proved.heading,
    columns: COLUMNS.map((column) => ({ label: words.say(`roster.proved.${column}`), align: "start" })),
    rows: proved.rows.map((row) => ({
      cells: [row.word, row.student, row.fundamental, row.levels, row.size, row.days, row.sure, row.position],
      tone: "plain",
    })),
  };
}
