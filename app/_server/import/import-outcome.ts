import { readDraft } from "@/db/read/drafts";
import { insertDraft } from "@/db/write/drafts";
import type { ImportConflict, ImportInsert } from "@/db/write/imports";
import type { ImportPage } from "@/lib/report/form-model";
import type { Words } from "@/lib/words/catalogue";
import { currentInstant } from "../clock";
import type { Viewer } from "../gate";

const KIND = "import-outcome";

/** Keeps what an import wrote in the place of its file, which isn't needed any more. */
export function keepOutcome(viewer: Viewer, draftId: string, outcome: ImportInsert): void {
  insertDraft(viewer.db, viewer.scope, {
    id: draftId,
    kind: KIND,
    body: JSON.stringify(outcome),
    updatedAt: currentInstant(),
  });
}

/** What an import wrote; null: no import of that id was confirmed. */
export function findOutcome(viewer: Viewer, draftId: string): ImportInsert | null {
  const row = readDraft(viewer.db, viewer.scope, draftId);
  return row && row.kind === KIND ? (JSON.parse(row.body) as ImportInsert) : null;
}

const CONFLICTS = "import-conflicts";

function conflictsId(batchId: string): string {
  return `conflicts:${batchId}`;
}

/** Keeps the readings that were on file with another value, for the import's own page. */
export function keepConflicts(viewer: Viewer, batchId: string, conflicts: readonly ImportConflict[]): void {
  if (conflicts.length === 0) return;
  const kept = { id: conflictsId(batchId), kind: CONFLICTS, body: JSON.stringify(conflicts) };
  insertDraft(viewer.db, viewer.scope, { ...kept, updatedAt: currentInstant() });
}

/** What was on file with another value when the import came. */
export function findConflicts(viewer: Viewer, batchId: string): readonly ImportConflict[] {
  const row = readDraft(viewer.db, viewer.scope, conflictsId(batchId));
  return row && row.kind === CONFLICTS ? (JSON.parse(row.body) as ImportConflict[]) : [];
}

/** Sentences on what an import wrote. */
export function sayOutcome(
  words: Words,
  outcome: ImportInsert,
): { readonly heading: string; readonly lines: readonly string[] } {
  if (outcome.kind === "already-imported")
    return { heading: words.say("import-done.already"), lines: [words.say("import-done.already.text")] };
  if (outcome.kind === "unknown-students")
    return {
      heading: words.say("import-done.unknown"),
      lines: [words.say("import-done.unknown.text", { aliases: outcome.aliases.join(", ") })],
    };
  const { students, sessions, swings, readings, skipped, conflicts } = outcome;
  return {
    heading: words.say("import-done.heading", { readings }),
    lines: [
      words.say("import-done.counts", { students, sessions, swings, readings }),
      ...(skipped > 0 ? [words.say("import-done.skipped", { skipped })] : []),
      ...(conflicts.length > 0 ? [words.say("import-done.conflicts", { conflicts: conflicts.length })] : []),
    ],
  };
}

/** The page after confirming. */
export function buildOutcomePage(words: Words, outcome: ImportInsert): ImportPage {
  const { heading, lines } = sayOutcome(words, outcome);
  return {
    title: heading,
    lede: words.say("import-done.lede"),
    upload: null,
    preview: null,
    progress: null,
    done: {
      heading,
      lines,
      links: [
        { href: "/students", label: words.say("import-done.roster") },
        ...(outcome.kind === "imported"
          ? [{ href: `/import/past/${outcome.batchId}`, label: words.say("past.this-one") }]
          : []),
        { href: "/import", label: words.say("import-done.more") },
      ],
    },
  };
}
