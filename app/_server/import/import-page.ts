import type { ImportIssue, ImportNote, ImportPreview, ImportQuestion, MessageArgs } from "@/lib/ingest/import-preview";
import type { ImportPage, ImportQuestionModel } from "@/lib/report/form-model";
import type { Words } from "@/lib/words/catalogue";
import { sayDay, sayStretch } from "@/lib/words/day-words";
import { sayGroupOfClubs } from "@/lib/words/say-club";
import { sayFundamental } from "@/lib/words/say-fundamental";
import type { AcademyRules } from "../season/student-record";
import { buildMapping } from "./import-mapping";
import { sourceFingerprint } from "./import-source";

const MOST_SHOWN = 60;

/** Who says what an import holds: the language, and the names that the academy gives to things. */
export interface Speaker extends Pick<AcademyRules, "fundamentals" | "grouping"> {
  readonly words: Words;
}

/** Arguments with names in the place of the ids of a fundamental and a club group. */
function named({ words, fundamentals, grouping }: Speaker, args: MessageArgs): MessageArgs {
  const fundamental = fundamentals.find((each) => each.id === args.fundamental);
  const group = grouping.find((each) => each.id === args.group);
  return {
    ...args,
    ...(fundamental ? { fundamental: sayFundamental(words, fundamental) } : {}),
    ...(group ? { group: sayGroupOfClubs(words, group) } : {}),
  };
}

/** What is asked, with every name in its place. */
export function sayQuestion(speaker: Speaker, question: ImportQuestion): string {
  return speaker.words.say(`import.question.${question.code}`, named(speaker, question.args));
}

/** An issue and its mend, in one sentence or two. */
export function sayIssue(speaker: Speaker, issue: ImportIssue): string {
  const args = named(speaker, issue.args);
  const said = speaker.words.say(`import.issue.${issue.code}`, args);
  return issue.mend === null ? said : `${said} ${speaker.words.say(`import.mend.${issue.mend}`, args)}`;
}

/** A value that was changed, guessed or set aside. */
export function sayNote(speaker: Speaker, note: ImportNote): string {
  return speaker.words.say(`import.note.${note.code}`, named(speaker, note.args));
}

/** “rows 14, 31–35, 52”. */
export function sayRows(words: Words, rows: readonly number[]): string {
  const spans: string[] = [];
  for (let at = 0; at < rows.length; ) {
    let end = at;
    while (rows[end + 1] === (rows[end] ?? 0) + 1) end++;
    spans.push(end > at + 1 ? `${rows[at]}–${rows[end]}` : rows.slice(at, end + 1).join(", "));
    at = end + 1;
  }
  const shown = spans.length > 12 ? [...spans.slice(0, 12), "…"] : spans;
  return words.say("import.rows", { count: rows.length, rows: shown.join(", ") });
}

function questionModel(speaker: Speaker, question: ImportQuestion, place: number): ImportQuestionModel {
  const { words } = speaker;
  const args = named(speaker, question.args);
  return {
    id: question.id,
    number: place + 1,
    heading: sayQuestion(speaker, question),
    rows: sayRows(words, question.rows),
    why: [
      words.say(`import.why.${question.code}`, args),
      question.problem === null ? "" : words.say(`import.issue.${question.problem}`, args),
    ]
      .filter((part) => part !== "")
      .join(" "),
    name: `answer:${question.id}`,
    value: question.answer ?? question.standing ?? "",
    options: question.options.map((option) => {
      const field = option.fields[0];
      return {
        value: option.id,
        label: words.say(`import.option.${option.code}`, named(speaker, option.args)),
        text: field
          ? {
              name: field.name,
              label: words.say(`import.ask.${field.code}`),
              value: question.answerFields.get(field.name.slice("answer-".length, field.name.indexOf(":"))) ?? "",
            }
          : null,
      };
    }),
  };
}

function limited(words: Words, items: readonly string[]): { readonly items: readonly string[]; readonly more: string } {
  return {
    items: items.slice(0, MOST_SHOWN),
    more: items.length > MOST_SHOWN ? words.say("import-page.more", { count: items.length - MOST_SHOWN }) : "",
  };
}

/** The preview of an uploaded file: how it is read, what needs an answer, what will be saved. */
export function buildPreviewPage(
  speaker: Speaker,
  draftId: string,
  draft: { readonly fileName: string },
  preview: ImportPreview,
): ImportPage {
  const { words, fundamentals } = speaker;
  const open = preview.questions.filter((question) => question.answer === null && question.standing === null).length;
  const questionMark = (marks: ImportPreview["sheet"][number]["marks"], place: number): number | null => {
    const mark = marks.find((each) => each.place === place);
    if (!mark) return null;
    return mark.kind === "question" ? mark.index + 1 : preview.questions.length + mark.index + 1;
  };
  return {
    title: words.say("import-page.ready", { ready: preview.rowsReady, total: preview.rowsTotal, open }),
    lede: words.say("import-page.nothing-saved", { file: draft.fileName }),
    upload: null,
    progress: null,
    done: null,
    preview: {
      draftId,
      columns: {
        margin: words.say("import-page.margin.sheet"),
        explains: words.say("import-page.sheet.explains"),
        heading: words.say("import-page.sheet.heading", {
          known: preview.columns.filter((column) => column.field !== null).length,
          left: preview.columns.filter((column) => column.field === null).length,
        }),
        rowLabel: words.say("import-page.row"),
        head: preview.columns.map((column) => {
          const fundamental = fundamentals.find((each) => each.id === column.fundamentalId);
          return {
            theirs: column.header,
            ours: fundamental
              ? sayFundamental(words, fundamental)
              : column.field === null
                ? words.say(`import.left-out.${column.why ?? "unknown"}`)
                : words.say(`import.field.${column.field}`),
            unit: column.unit === null ? "" : words.say(`import.unit.${column.unit}`),
          };
        }),
        rows: preview.sheet.map((row) => ({
          number: row.row,
          cells: row.cells.map((text, at) => ({ text, mark: questionMark(row.marks, at + 1) })),
        })),
        gap: "⋮",
      },
      source:
        preview.remembered === null
          ? null
          : {
              margin: words.say("import-page.margin.source"),
              text: words.say(
                preview.remembered.fileName === "" ? "import-page.source.unnamed" : "import-page.source",
                {
                  day: sayDay(words, preview.remembered.day, "day-year"),
                  file: preview.remembered.fileName,
                },
              ),
              fingerprint: sourceFingerprint(preview.heads),
              forget: words.say("import-page.source.forget"),
            },
      mapping: buildMapping(words, fundamentals, preview.columns),
      questions:
        preview.questions.length === 0
          ? null
          : {
              margin: words.say("import-page.margin.questions"),
              explains: words.say("import-page.questions.explains"),
              heading: words.say("import-page.questions.heading", { count: preview.questions.length }),
              columns: [
                words.say("import-page.question"),
                words.say("import-page.why"),
                words.say("import-page.answer"),
              ],
              items: preview.questions.map((question, place) => questionModel(speaker, question, place)),
              submit: words.say("import-page.answer-all"),
            },
      issues:
        preview.issues.length === 0
          ? null
          : {
              margin: words.say("import-page.margin.issues"),
              heading: words.say("import-page.issues.heading", { count: preview.issues.length }),
              ...limited(
                words,
                preview.issues.map((issue) => sayIssue(speaker, issue)),
              ),
            },
      notes:
        preview.notes.length === 0
          ? null
          : {
              margin: words.say("import-page.margin.notes"),
              heading: words.say("import-page.notes.heading", { count: preview.notes.length }),
              ...limited(
                words,
                preview.notes.map((note) => sayNote(speaker, note)),
              ),
            },
      saved: {
        margin: words.say("import-page.margin.saved"),
        heading: words.say("import-page.saved.heading", { students: preview.summaries.length }),
        lines: preview.summaries.map((summary) =>
          words.say("import-page.saved.student", {
            alias: summary.alias,
            isNew: summary.isNew,
            sessions: summary.sessions,
            swings: summary.swings,
            readings: summary.readings,
            stretch: sayStretch(words, summary.firstDay, summary.lastDay),
          }),
        ),
        fates: words.say("import-page.fates", {
          ready: preview.rowsReady,
          waiting: preview.waitingRows.length,
          out: preview.restRows.length - preview.waitingRows.length,
        }),
        all:
          preview.rowsTotal === 0
            ? null
            : {
                href: `/api/import/${draftId}/rows`,
                label: words.say("import-page.all-rows", { count: preview.rowsTotal }),
              },
        submit: preview.plan === null ? null : words.say("import-page.import", { ready: preview.rowsReady }),
        drop: words.say("import-page.drop"),
        rejected:
          preview.restRows.length === 0
            ? null
            : {
                href: `/api/import/${draftId}/rest`,
                label: words.say("import-page.rest", { count: preview.restRows.length }),
              },
      },
    },
  };
}
