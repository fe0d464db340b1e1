import { isIdIn, type Naming } from "@/lib/domain/named-in";
import { scrubbedText } from "@/lib/domain/without-names";
import type { Database } from "../client";
import { KEPT } from "./kept-files";

/** Whether an uploaded file may hold something of whoever bears these aliases; `body`: in base64, as kept. */
export type MayHold = (body: string, aliases: readonly string[]) => boolean;

/** What is kept for an academy, is no student's own, and names somebody. */
export interface NamedDrafts {
  /** Ids of uploads of which nothing can be taken out; the file of one lies under its id and `.file`. */
  readonly files: readonly string[];
  /** Ids of forms about something of theirs. */
  readonly forms: readonly string[];
  /** Forms and logs about several students, without what names them. */
  readonly changed: readonly { readonly id: string; readonly body: string }[];
}

const FILE = "import-file";

interface DraftRow {
  readonly id: string;
  readonly kind: string;
  readonly body: string;
}

function isUpload({ kind }: DraftRow): boolean {
  const bare = kind.startsWith(KEPT) ? kind.slice(KEPT.length) : kind;
  return bare === FILE || bare === "import";
}

/** An upload as it was kept once holds its file; one that isn't as any was kept is taken for a text. */
function headOf(body: string): { readonly file: string; readonly text: string } {
  try {
    const { file = "", ...head } = JSON.parse(body) as { readonly file?: string };
    return { file, text: JSON.stringify(head) };
  } catch {
    return { file: "", text: body };
  }
}

function uploadNames(row: DraftRow, naming: Naming, mayHold: MayHold): boolean {
  if (row.kind.endsWith(FILE)) return mayHold(row.body, naming.aliases);
  const { file, text } = headOf(row.body);
  return scrubbedText(text, naming) !== text || mayHold(file, naming.aliases);
}

/** Drafts of others, and of nobody, that name somebody; their own are left out. */
export function readNamedDrafts(
  db: Database,
  { academyId, studentIds }: { readonly academyId: string; readonly studentIds: readonly string[] },
  naming: Naming,
  mayHold: MayHold,
): NamedDrafts {
  const files = new Set<string>();
  const forms: string[] = [];
  const changed: { id: string; body: string }[] = [];
  const rows = db.sqlite
    .prepare<[string, string], DraftRow>(
      `SELECT id, kind, body FROM draft WHERE academy_id = ?
         AND (student_id IS NULL OR student_id NOT IN (SELECT value FROM json_each(?)))`,
    )
    .iterate(academyId, JSON.stringify(studentIds));
  for (const row of rows) {
    if (isUpload(row)) {
      if (uploadNames(row, naming, mayHold)) files.add(row.id.replace(/\.file$/, ""));
    } else if (isIdIn(row.kind, naming.ids)) forms.push(row.id);
    else {
      const body = scrubbedText(row.body, naming);
      if (body !== row.body) changed.push({ id: row.id, body });
    }
  }
  return { files: [...files], forms, changed };
}
