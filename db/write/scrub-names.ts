import { isAliasInFileName, isIdIn, type Naming } from "@/lib/domain/named-in";
import { scrubbedText } from "@/lib/domain/without-names";
import type { Database } from "../client";
import type { ErasedGroup } from "../read/erased-group";
import { type MayHold, readNamedDrafts } from "../read/named-drafts";

/** What taking names out needs from outside. */
export interface ScrubDoor {
  /** What stands in the place of a file's name that names the student. */
  readonly blank: string;
  readonly mayHold: MayHold;
}

/** What was taken out of the rows of others. */
export interface ScrubCounts {
  /** Uploaded files that held the student's rows, or may have. */
  readonly files: number;
  /** Unfinished forms about several students, of which the student's fields went. */
  readonly forms: number;
}

type Whose = { readonly academyId: string };
type Text = Readonly<Record<string, string>>;

function all<T>(db: Database, sql: string, { academyId }: Whose): T[] {
  return db.sqlite.prepare<[string], T>(sql).all(academyId);
}

// The answer to a form about several students stays for the others, so that it isn't saved twice.
function scrubReceipts(db: Database, whose: Whose, naming: Naming): void {
  const remove = db.sqlite.prepare<[string, string]>("DELETE FROM form_receipt WHERE academy_id = ? AND key = ?");
  const put = db.sqlite.prepare<[string, string, string]>(
    "UPDATE form_receipt SET outcome = ? WHERE academy_id = ? AND key = ?",
  );
  for (const { key, kind, outcome } of all<Text>(
    db,
    "SELECT key, kind, outcome FROM form_receipt WHERE academy_id = ?",
    whose,
  )) {
    if (key === undefined || kind === undefined || outcome === undefined) continue;
    const kept = scrubbedText(outcome, naming);
    if (isIdIn(kind, naming.ids) || (kept !== outcome && kind !== "group-form")) remove.run(whose.academyId, key);
    else if (kept !== outcome) put.run(kept, whose.academyId, key);
  }
}

function scrubByNumber(
  db: Database,
  whose: Whose,
  table: "note_coding" | "record_change" | "seen",
  change: (text: Text) => string | "goes" | null,
  columns: readonly string[],
): void {
  const rows = all<Text & { readonly id: string }>(
    db,
    `SELECT id, ${columns.join(", ")} FROM ${table} WHERE academy_id = ?`,
    whose,
  );
  for (const row of rows) {
    const kept = change(row);
    if (kept === "goes") db.sqlite.prepare(`DELETE FROM ${table} WHERE id = ?`).run(row.id);
    else if (kept !== null) db.sqlite.prepare(`UPDATE ${table} SET ${columns[0]} = ? WHERE id = ?`).run(kept, row.id);
  }
}

function scrubImports(db: Database, whose: Whose, naming: Naming, blank: string): void {
  for (const [table, key] of [
    ["import_batch", "id"],
    ["import_source", "fingerprint"],
  ] as const) {
    const rows = all<{ key: string; file: string; answers: string }>(
      db,
      `SELECT ${key} AS key, file_name AS file, answers FROM ${table} WHERE academy_id = ?`,
      whose,
    );
    const put = db.sqlite.prepare(
      `UPDATE ${table} SET file_name = :file, answers = :answers WHERE academy_id = :academy AND ${key} = :key`,
    );
    for (const row of rows) {
      const file = isAliasInFileName(row.file, naming.aliases) ? blank : row.file;
      const answers = scrubbedText(row.answers, naming);
      if (file !== row.file || answers !== row.answers)
        put.run({ file, answers, academy: whose.academyId, key: row.key });
    }
  }
}

function scrubDrafts(db: Database, whose: ErasedGroup, naming: Naming, mayHold: MayHold): ScrubCounts {
  const { files, forms, changed } = readNamedDrafts(db, whose, naming, mayHold);
  const remove = db.sqlite.prepare<[string]>("DELETE FROM draft WHERE id = ?");
  for (const id of forms) remove.run(id);
  for (const base of files) for (const id of [base, `${base}.file`]) remove.run(id);
  const put = db.sqlite.prepare<[string, string]>("UPDATE draft SET body = ?, version = version + 1 WHERE id = ?");
  for (const { id, body } of changed) put.run(body, id);
  return { files: files.length, forms: forms.length + changed.length };
}

/** Takes what names a student out of the rows of others and of the academy. To be called inside a transaction. */
export function scrubNames(db: Database, whose: ErasedGroup, naming: Naming, door: ScrubDoor): ScrubCounts {
  const { academyId } = whose;
  scrubReceipts(db, whose, naming);
  scrubByNumber(
    db,
    whose,
    "seen",
    ({ body = "" }) => (scrubbedText(body, naming) === body ? null : scrubbedText(body, naming)),
    ["body"],
  );
  scrubByNumber(
    db,
    whose,
    "note_coding",
    ({ phrase = "", coding = "" }) => (isIdIn(`${phrase} ${coding}`, naming.ids) ? "goes" : null),
    ["phrase", "coding"],
  );
  scrubByNumber(
    db,
    whose,
    "record_change",
    ({ before = "", after = "" }) => (isIdIn(`${before} ${after}`, naming.ids) ? "goes" : null),
    ["before", "after"],
  );
  for (const { viewer, name, value } of all<Text>(
    db,
    "SELECT viewer, name, value FROM preference WHERE academy_id = ?",
    whose,
  ))
    if (isIdIn(`${name} ${value}`, naming.ids))
      db.sqlite
        .prepare("DELETE FROM preference WHERE academy_id = ? AND viewer = ? AND name = ?")
        .run(academyId, viewer, name);
  // The roster's list is made anew from the rest.
  db.sqlite.prepare("DELETE FROM roster_list WHERE academy_id = ?").run(academyId);
  scrubImports(db, whose, naming, door.blank);
  return scrubDrafts(db, whose, naming, door.mayHold);
}
