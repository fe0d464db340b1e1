import { type ArchivePreview, aliasAnswer } from "@/lib/ingest/plan-archive";
import type { ArchiveReading } from "@/lib/ingest/read-archive";
import type { ArchiveImportPage } from "@/lib/report/archive-import-model";
import type { Words } from "@/lib/words/catalogue";
import { sayDay, sayStretch } from "@/lib/words/day-words";
import type { Viewer } from "../gate";
import type { ImportDraft } from "../import/import-desk";
import { archiveIn, previewArchive } from "./archive-desk";

type Unreadable = Exclude<ArchiveReading, { readonly kind: "archive" | "no-archive" }>;

function sayUnreadable(words: Words, reading: Unreadable): readonly string[] {
  if (reading.kind === "too-big") return [words.say("archive-import.too-big", { limit: reading.limit })];
  if (reading.kind === "other-version")
    return [words.say("archive-import.other-version", { version: reading.version })];
  return reading.issues.map(({ where, code }) => words.say("archive-import.broken", { where, code }));
}

function sayStudents(words: Words, preview: ArchivePreview): readonly string[] {
  return preview.students.map(({ firstDay, lastDay, ...counts }) =>
    firstDay === ""
      ? words.say("archive-import.student.empty", { alias: counts.alias })
      : words.say("archive-import.student", { ...counts, stretch: sayStretch(words, firstDay, lastDay) }),
  );
}

function sayDifferences(words: Words, { differences }: ArchivePreview): readonly string[] {
  if (differences.length === 0) return [words.say("archive-import.same")];
  return differences.map(({ code, args }) => {
    const days = Object.entries(args).map(([name, value]) => [
      name,
      code === "season" && typeof value === "string" ? sayDay(words, value, "short") : value,
    ]);
    return words.say(`archive-import.difference.${code}`, Object.fromEntries(days));
  });
}

function askedOf(words: Words, { aliases }: ArchivePreview): ArchiveImportPage["asked"] {
  if (aliases.length === 0) return null;
  return {
    margin: words.say("archive-import.asked.margin"),
    heading: words.say("archive-import.asked.heading", { count: aliases.length }),
    why: words.say("archive-import.asked.why"),
    fields: aliases.map(({ studentId, alias, answer }) => ({
      name: aliasAnswer(studentId),
      label: words.say("archive-import.alias", { alias }),
      value: answer,
    })),
    submit: words.say("archive-import.answer"),
  };
}

/** The preview of an uploaded archive; null: the file is no archive. */
export function buildArchivePage(viewer: Viewer, draftId: string, draft: ImportDraft): ArchiveImportPage | null {
  const { words } = viewer;
  const reading = archiveIn(draft);
  if (reading.kind === "no-archive") return null;
  const drop = words.say("import-page.drop");
  const lede = words.say("archive-import.nothing-saved", { file: draft.fileName });
  const inTheWay = (items: readonly string[]) => ({
    margin: words.say("archive-import.refused.margin"),
    heading: words.say("archive-import.refused.heading"),
    items,
  });
  const stopped = words.say("archive-import.stopped");
  if (reading.kind !== "archive")
    return {
      title: stopped,
      lede,
      draftId,
      asked: null,
      lists: [inTheWay(sayUnreadable(words, reading))],
      submit: null,
      drop,
    };
  const preview = previewArchive(viewer, draft, reading.archive);
  const students = preview.students.length;
  const refused = preview.refusals.map(({ code, args }) => words.say(`archive-import.refusal.${code}`, args));
  return {
    title: preview.plan === null ? stopped : words.say("archive-import.title", { students }),
    lede,
    draftId,
    asked: askedOf(words, preview),
    lists: [
      ...(refused.length === 0 ? [] : [inTheWay(refused)]),
      {
        margin: words.say("archive-import.differs.margin"),
        heading: words.say("archive-import.differs.heading"),
        items: sayDifferences(words, preview),
      },
      {
        margin: words.say("import-page.margin.saved"),
        heading: words.say("archive-import.saved.heading"),
        items: sayStudents(words, preview),
      },
    ],
    submit: preview.plan === null ? null : words.say("archive-import.confirm", { students }),
    drop,
  };
}
