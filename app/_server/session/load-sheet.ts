import { readSessions } from "@/db/read/sessions";
import { readStudent } from "@/db/read/students";
import { buildReadingSheet } from "@/lib/report/build-reading-sheet";
import type { ReadingSheet } from "@/lib/report/sheet-model";
import type { StudentViewer } from "../gate";
import { loadGridSource } from "./grid-desk";
import { USUAL_GROUP } from "./load-forms";
import { gridFundamentals } from "./session-grid";

/** What an address may say once or several times. */
type Said = string | readonly string[] | undefined;

/** The paper sheet of a student's next session, with the columns of the form unless others are wished. */
export async function loadReadingSheet(
  viewer: StudentViewer,
  wish: { readonly swings?: Said; readonly columns?: Said },
): Promise<ReadingSheet> {
  const clubGroup = readSessions(viewer.db, viewer.student).at(-1)?.clubGroup ?? USUAL_GROUP;
  const grid = await loadGridSource(viewer, clubGroup);
  const source = {
    studentId: grid.studentId,
    alias: readStudent(viewer.db, viewer.student).alias,
    hand: grid.hand,
    fundamentals: gridFundamentals(grid.fundamentals, grid.first),
    first: grid.first,
  };
  const said = (value: Said): readonly string[] => (typeof value === "string" ? [value] : (value ?? []));
  return buildReadingSheet(viewer.words, source, { swings: said(wish.swings)[0], columns: said(wish.columns) });
}
