import { readBuiltOnImport, readTouchedStudents } from "@/db/read/built-on-import";
import { readDraft } from "@/db/read/drafts";
import { type ImportBatch, readImportBatchById, readImportedStudents } from "@/db/read/import-batches";
import { readKept } from "@/db/read/kept-files";
import type { ImportConflict } from "@/db/write/imports";
import type { Link } from "@/lib/report/page-model";
import type { PastImportPage, PastLines, UndoModel } from "@/lib/report/past-import-model";
import type { Words } from "@/lib/words/catalogue";
import { sayDay } from "@/lib/words/day-words";
import { sayFundamental } from "@/lib/words/say-fundamental";
import { linkTables } from "../archive/table-links";
import { admitToStudent, type Viewer } from "../gate";
import { loadAcademyRules } from "../season/student-record";
import { findConflicts } from "./import-outcome";
import { type Speaker, sayIssue, sayNote } from "./import-page";
import { FILE_DAYS, type KeptEntry, readKeptAnswers, sayDoor, sayMoment } from "./past-imports";

/** Lines of one kind that a page shows; the rest are counted. */
const MOST_SHOWN = 60;

function linesOf(words: Words, name: string, items: readonly string[]): PastLines[] {
  if (items.length === 0) return [];
  const more = items.length - MOST_SHOWN;
  return [
    {
      margin: words.say(`past-one.${name}.margin`),
      heading: words.say(`past-one.${name}.heading`, { count: items.length }),
      items: items.slice(0, MOST_SHOWN),
      more: more > 0 ? words.say("past-one.more", { count: more }) : "",
    },
  ];
}

// A log may have been written by another version, whose codes have no words any more.
function saidEntry(say: (entry: KeptEntry) => string): (entry: KeptEntry) => string {
  return (entry) => {
    try {
      return say(entry);
    } catch {
      return [entry.code, entry.column, entry.args.rows].filter(Boolean).join(" ");
    }
  };
}

function sayAnswer(words: Words, { id, option }: { readonly id: string; readonly option: string }): string {
  const about = id.slice(id.indexOf(":") + 1);
  try {
    return words.say("past-one.answer", { about, answer: words.say(`import.option.${option}`) });
  } catch {
    return words.say("past-one.answer", { about, answer: option });
  }
}

function sayConflict(speaker: Speaker, one: ImportConflict): string {
  const { words, fundamentals } = speaker;
  const fundamental = fundamentals.find((each) => each.id === one.fundamentalId);
  return words.say("past-one.conflict", {
    alias: one.alias,
    day: sayDay(words, one.day, "day-year"),
    swing: one.swing,
    fundamental: fundamental ? sayFundamental(words, fundamental) : one.fundamentalId,
    onFile: one.onFile.typed,
    given: one.given.typed,
  });
}

function allLines(viewer: Viewer, batch: ImportBatch): PastLines[] {
  const { words, db, scope, academy } = viewer;
  const speaker: Speaker = { words, ...loadAcademyRules(db, scope, academy) };
  const { answers = [], changed = [], left = [] } = readKeptAnswers(batch);
  const note = saidEntry((entry) => sayNote(speaker, { ...entry, rows: [] }));
  const issue = saidEntry((entry) => sayIssue(speaker, { ...entry, row: null, rows: [], value: null, mend: null }));
  return [
    ...linesOf(
      words,
      "conflicts",
      findConflicts(viewer, batch.id).map((one) => sayConflict(speaker, one)),
    ),
    ...linesOf(
      words,
      "answers",
      answers.map((answer) => sayAnswer(words, answer)),
    ),
    ...linesOf(words, "changed", changed.map(note)),
    ...linesOf(words, "left", left.map(issue)),
  ];
}

/** Where a file lies that was given back; null: it isn't kept. */
function fileLink({ db, scope, words }: Viewer, batch: ImportBatch): Link | null {
  const kept = readDraft(db, scope, batch.id);
  return kept?.kind === "import"
    ? { href: `/import/${batch.id}`, label: words.say("undo.done.file", { file: batch.fileName }) }
    : null;
}

function undoneModel(viewer: Viewer, batch: ImportBatch): UndoModel {
  const { words } = viewer;
  const when = sayMoment(viewer, batch.undoneAt ?? batch.createdAt);
  const link = fileLink(viewer, batch) ?? { href: "/import", label: words.say("undo.done.new-file") };
  return {
    margin: words.say("undo.margin"),
    heading: words.say("undo.done.heading", { when, who: batch.undoneBy ?? "" }),
    paragraphs: [words.say("undo.done.text")],
    built: [],
    instead: "",
    links: [link],
    form: null,
  };
}

function undoModel(viewer: Viewer, batch: ImportBatch, newStudents: number, problem: string | undefined): UndoModel {
  const { words, db, scope } = viewer;
  if (batch.undoneAt !== null) return undoneModel(viewer, batch);
  const margin = words.say("undo.margin");
  const built = readBuiltOnImport(db, scope, batch);
  if (built.length > 0)
    return {
      margin,
      heading: words.say("undo.built.heading"),
      paragraphs: [words.say("undo.built.text")],
      built: built.map(({ kind, count, alias, day, studentId }) => ({
        text: words.say(`undo.built.${kind}`, {
          alias: alias ?? "",
          count,
          day: day === null ? "" : words.say("undo.built.day", { day: sayDay(words, day, "day-year") }),
        }),
        link:
          studentId === null || alias === null
            ? null
            : {
                href: `/students/${encodeURIComponent(studentId)}`,
                label: words.say("past-one.see-one", { alias }),
              },
      })),
      instead: words.say("undo.built.instead"),
      links: [],
      form: null,
    };
  if (readTouchedStudents(db, batch.id).some(({ id }) => admitToStudent(viewer, id) === null))
    return {
      margin,
      heading: words.say("undo.out.heading"),
      paragraphs: [words.say("undo.out.text")],
      built: [],
      instead: "",
      links: [],
      form: null,
    };
  const kept = `file-${readKept(db, scope, batch.id)}`;
  return {
    margin,
    heading: words.say("undo.heading"),
    paragraphs: [
      words.say("undo.text", { students: newStudents }),
      ...(batch.door === "archive" ? [words.say("undo.archive")] : []),
      words.say(`undo.${kept}`, { days: FILE_DAYS, file: batch.fileName }),
    ],
    built: [],
    instead: "",
    links: [],
    form: {
      batchId: batch.id,
      sure: words.say("undo.sure", { readings: batch.readings }),
      submit: words.say("undo.submit"),
      error: problem === "not-sure" ? words.say("undo.not-sure") : "",
    },
  };
}

/** One import; null: there is none of that id in this academy. */
export function loadPastImport(viewer: Viewer, batchId: string, problem: string | undefined): PastImportPage | null {
  const { words, db, scope } = viewer;
  const batch = readImportBatchById(db, scope, batchId);
  if (!batch) return null;
  const students = readImportedStudents(db, scope, batchId);
  const { fileName: file, readings, rows } = batch;
  const fresh = students.filter((student) => student.isNew === 1).length;
  return linkTables(
    words,
    "past-import",
    { batch: batchId },
    {
      title: words.say(batch.undoneAt === null ? "past-one.title" : "past-one.title-undone", { file, readings }),
      lede: words.say("past-one.lede", { rows, when: sayMoment(viewer, batch.createdAt), by: sayDoor(viewer, batch) }),
      back: { href: "/import/past", label: words.say("past-one.back") },
      students:
        students.length === 0
          ? null
          : {
              margin: words.say("past-one.students.margin"),
              heading: words.say("past-one.students.heading", { count: students.length }),
              table: {
                caption: words.say("past-one.students.margin"),
                columns: [
                  { label: words.say("past-one.student"), align: "start" },
                  { label: words.say("past-one.sessions"), align: "end" },
                  { label: words.say("past-one.readings"), align: "end" },
                ],
                rows: students.map(({ alias, isNew, sessions, readings: brought }) => ({
                  tone: "plain",
                  cells: [
                    isNew === 1 ? words.say("past-one.student-new", { alias }) : alias,
                    String(sessions),
                    String(brought),
                  ],
                })),
              },
              linkLabel: words.say("past-one.see"),
              links: students.map(({ id, alias }) => ({
                href: `/students/${encodeURIComponent(id)}`,
                label: words.say("past-one.see-one", { alias }),
              })),
            },
      lines: allLines(viewer, batch),
      undo: undoModel(viewer, batch, fresh, problem),
    },
  );
}
