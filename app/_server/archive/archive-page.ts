import { APART, type CatalogueQuestion } from "@/lib/ingest/map-archive";
import { type ArchiveNote, type ArchivePreview, aliasAnswer } from "@/lib/ingest/plan-archive";
import type { ArchiveImportPage } from "@/lib/report/archive-import-model";
import type { Words } from "@/lib/words/catalogue";
import { sayDay, sayStretch } from "@/lib/words/day-words";
import type { Viewer } from "../gate";
import type { ImportDraft } from "../import/import-desk";
import type { ArchiveResult } from "../worker/file-tasks";
import { readUploadedArchive } from "./archive-desk";

type Unreadable = Exclude<ArchiveResult, { readonly kind: "archive" | "no-archive" }>;

/** Why an archive can't be read. */
export function sayUnreadable(words: Words, reading: Unreadable): readonly string[] {
  if (reading.kind === "heavy") return [words.say("import.issue.heavy")];
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

/** What is taken over otherwise than it was. */
export function sayDifference(words: Words, { code, args }: ArchiveNote): string {
  const days = Object.entries(args).map(([name, value]) => [
    name,
    (code === "season" || name === "day") && typeof value === "string" ? sayDay(words, value, "short") : value,
  ]);
  return words.say(`archive-import.difference.${code}`, Object.fromEntries(days));
}

/** What keeps an archive from being taken over. */
export function sayRefusal(words: Words, { code, args }: ArchiveNote): string {
  return words.say(`archive-import.refusal.${code}`, args);
}

/** A question about the catalogue, and what it can be answered with. */
export function sayQuestion(words: Words, { code, args }: CatalogueQuestion): string {
  return words.say(`archive-import.question.${code}`, args);
}

function optionsOf(words: Words, { options }: CatalogueQuestion) {
  return [
    { value: "", label: words.say("archive-import.choose") },
    ...options.map(({ value, name }) => ({
      value,
      label: words.say(value === APART ? "archive-import.apart" : "archive-import.ours", { name }),
    })),
  ];
}

/** Only an option is an answer: another text in its place is none. */
function answerOf({ options, answer }: CatalogueQuestion): string {
  return options.some(({ value }) => value === answer) ? answer : "";
}

function askedOf(words: Words, { aliases, questions }: ArchivePreview): ArchiveImportPage["asked"] {
  const count = aliases.length + questions.length;
  if (count === 0) return null;
  return {
    margin: words.say("archive-import.asked.margin"),
    heading: words.say("archive-import.asked.heading", { count }),
    why: words.say("archive-import.asked.why"),
    fields: [
      ...aliases.map(({ studentId, alias, answer }) => ({
        name: aliasAnswer(studentId),
        label: words.say("archive-import.alias", { alias }),
        value: answer,
      })),
      ...questions.map((question) => ({
        name: question.name,
        label: sayQuestion(words, question),
        value: answerOf(question),
        options: optionsOf(words, question),
      })),
    ],
    submit: words.say("archive-import.answer"),
  };
}

/** The preview of an uploaded archive; null: the file is no archive. */
export async function buildArchivePage(
  viewer: Viewer,
  draftId: string,
  draft: ImportDraft,
): Promise<ArchiveImportPage | null> {
  const { words } = viewer;
  const { result: reading } = await readUploadedArchive(viewer, draft, "archive");
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
  const students = reading.students.length;
  const refused = reading.refusals.map((note) => sayRefusal(words, note));
  const differing = reading.differences.map((note) => sayDifference(words, note));
  return {
    title: reading.state === "not-ready" ? stopped : words.say("archive-import.title", { students }),
    lede,
    draftId,
    asked: askedOf(words, reading),
    lists: [
      ...(refused.length === 0 ? [] : [inTheWay(refused)]),
      {
        margin: words.say("archive-import.differs.margin"),
        heading: words.say("archive-import.differs.heading"),
        items: [
          ...(differing.length === 0 ? [words.say("archive-import.same")] : differing),
          words.say("archive-import.told"),
        ],
      },
      {
        margin: words.say("import-page.margin.saved"),
        heading: words.say("archive-import.saved.heading"),
        items: sayStudents(words, reading),
      },
    ],
    submit: reading.state === "not-ready" ? null : words.say("archive-import.confirm", { students }),
    drop,
  };
}
