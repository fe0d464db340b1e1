import { expect, test } from "vitest";
import { readTableNames } from "@/db/digest";
import { countRows } from "./academy-fixture";
import { openFilledAcademy } from "./filled-academy";

test("rows without their parent can't be written, in any table that has one", async () => {
  const db = await openFilledAcademy();
  const references = readTableNames(db.sqlite).flatMap((table) =>
    db.sqlite
      .prepare<[string], { from: string }>('SELECT "from" FROM pragma_foreign_key_list(?)')
      .all(table)
      .map(({ from }) => ({ table, from })),
  );
  expect(references.length).toBeGreaterThan(20);
  for (const { table, from } of references) {
    const dangling = () =>
      db.sqlite.prepare(`UPDATE ${table} SET ${from} = '987654' WHERE rowid = (SELECT min(rowid) FROM ${table})`).run();
    expect(dangling, `${table}.${from}`).toThrow(/FOREIGN KEY|never changed/);
  }
});

test("a student's rows go with the student; another academy's and the noise models stay", async () => {
  const db = await openFilledAcademy();
  db.sqlite.exec("DELETE FROM student WHERE id = 's1'");
  const gone = ["session", "capture", "stated_capture_sd", "swing", "reading", "correction", "height", "event"];
  const alsoGone = ["drill_assignment", "goal_band", "look_noise", "analysis", "reread_item"];
  const entered = ["record_change", "rebaseline_change", "practice", "read_back", "read_back_item"];
  const about = [
    "charge",
    "family_link",
    "family_opening",
    "family_request",
    "record_view",
    "retention_notice",
    "carried_look",
  ];
  for (const table of [...gone, ...alsoGone, ...entered, ...about])
    expect(`${table} ${countRows(db, table)}`).toBe(`${table} 0`);
  const kept = ["student", "noise_model", "drill", "reader_error_fit"].map((table) => countRows(db, table));
  expect(kept).toEqual([2, 1, 1, 1]);
});
