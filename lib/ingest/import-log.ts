import type {
  ImportAnswer,
  ImportAnswers,
  ImportIssue,
  ImportNote,
  ImportOption,
  ImportQuestion,
  MessageArgs,
} from "./import-preview";
import { rowRanges, shownValue } from "./text-key";

/** So many different values of one fault in one column are listed one by one; the rest share an entry with all their rows. */
const DISTINCT_LIMIT = 200;
/** Runs of rows that a sentence names. */
const SHOWN_RUNS = 12;

export interface IssueEntry {
  readonly code: string;
  readonly row: number | null;
  readonly column?: string | null;
  readonly value?: string | null;
  readonly args?: MessageArgs;
  readonly mend?: string | null;
  /** 0-based place of the cell; null: the whole row. */
  readonly at?: number | null;
}

export interface QuestionEntry {
  readonly id: string;
  readonly code: string;
  readonly args?: MessageArgs;
  readonly options: readonly ImportOption[];
  /** What holds while nobody answers; null: the rows wait. */
  readonly standing?: string | null;
  readonly at?: number | null;
}

/** An option as an entry: `id` is its message code unless another is given. */
export function option(
  id: string,
  args: MessageArgs = {},
  field?: ImportOption["fields"][number],
  code = id,
): ImportOption {
  return { id, code, args, fields: field ? [field] : [] };
}

interface Gathered {
  readonly rows: number[];
  readonly at: number | null;
}

function ascending(rows: readonly number[]): readonly number[] {
  for (let at = 1; at < rows.length; at++) {
    if ((rows[at] ?? 0) <= (rows[at - 1] ?? 0)) return [...new Set(rows)].sort((a, b) => a - b);
  }
  return rows;
}

const NOTHING: ReadonlyMap<string, string> = new Map();

/** Gathers what an import refuses, asks and changes, one entry a kind with every row of it. */
export class ImportLog {
  #answers: ImportAnswers;
  readonly #issues = new Map<string, Gathered & { readonly entry: IssueEntry }>();
  readonly #distinct = new Map<string, number>();
  readonly #notes = new Map<
    string,
    { readonly code: string; readonly column: string | null; readonly args: MessageArgs; readonly rows: number[] }
  >();
  readonly #questions: { question: ImportQuestion; readonly at: number | null }[] = [];

  readonly #told = new Set<number>();

  constructor(answers: ImportAnswers) {
    this.#answers = answers;
  }

  /** Answers given for an earlier file of the same source; what is answered for this file holds before them. */
  recall(earlier: ImportAnswers): void {
    this.#answers = new Map([...earlier, ...this.#answers]);
  }

  get answers(): ImportAnswers {
    return this.#answers;
  }

  issue(entry: IssueEntry): void {
    const kind = `${entry.code}\u0000${entry.column ?? ""}`;
    let key = `${kind}\u0000${entry.value ?? ""}`;
    let gathered = this.#issues.get(key);
    if (!gathered) {
      const distinct = (this.#distinct.get(kind) ?? 0) + 1;
      this.#distinct.set(kind, distinct);
      if (distinct > DISTINCT_LIMIT) key = `${kind}\u0000…`;
      gathered = this.#issues.get(key) ?? { rows: [], at: entry.at ?? null, entry };
      this.#issues.set(key, gathered);
    }
    if (entry.row === null) return;
    gathered.rows.push(entry.row);
    this.#told.add(entry.row);
  }

  /** `kind` keeps notes of one code apart, where their arguments differ. */
  note(code: string, row: number, column: string | null = null, args: MessageArgs = {}, kind = ""): void {
    const key = `${code}\u0000${column ?? ""}\u0000${kind}`;
    const kept = this.#notes.get(key);
    if (kept) kept.rows.push(row);
    else this.#notes.set(key, { code, column, args, rows: [row] });
  }

  /** Puts a question with all its rows; returns the usable answer, or what stands unasked, or null: wait. */
  ask(entry: QuestionEntry, rows: readonly number[]): ImportAnswer | null {
    for (const row of rows) this.#told.add(row);
    const given = this.#answers.get(entry.id);
    const chosen = given ? entry.options.find((candidate) => candidate.id === given.option) : undefined;
    const lacks = chosen?.fields.some(
      (field) => field.required === "required" && !given?.fields.get(field.name)?.trim(),
    );
    const standing = entry.standing ?? null;
    const options = entry.options.map((candidate) => ({
      ...candidate,
      fields: candidate.fields.map((field) => ({ ...field, name: `answer-${field.name}:${entry.id}` })),
    }));
    this.#questions.push({
      at: entry.at ?? null,
      question: {
        id: entry.id,
        code: entry.code,
        args: entry.args ?? {},
        rows: ascending(rows),
        options,
        answer: chosen?.id ?? null,
        answerFields: chosen ? (given?.fields ?? NOTHING) : NOTHING,
        standing,
        problem: lacks ? "answer-incomplete" : null,
      },
    });
    if (chosen && given && !lacks) return given;
    return standing === null ? null : { option: standing, fields: NOTHING };
  }

  /** The option that was given to a question before it is asked; null: none. */
  answerTo(id: string): string | null {
    return this.#answers.get(id)?.option ?? null;
  }

  /** Whether an issue or a question names a row already. */
  isTold(row: number): boolean {
    return this.#told.has(row);
  }

  /** Says why the answer just given to a question can't be used. */
  refuseAnswer(id: string, problem: string): void {
    const found = this.#questions.find(({ question }) => question.id === id);
    if (found) found.question = { ...found.question, problem };
  }

  finish(): {
    readonly issues: readonly ImportIssue[];
    readonly questions: readonly ImportQuestion[];
    readonly notes: readonly ImportNote[];
    /** 0-based places of the cells that each issue and question is about, in the same order. */
    readonly issuePlaces: readonly (number | null)[];
    readonly questionPlaces: readonly (number | null)[];
  } {
    const issues = [...this.#issues.values()]
      .map(({ entry, rows, at }) => ({ at, issue: finishIssue(entry, ascending(rows)) }))
      .sort((a, b) => (a.issue.row ?? 0) - (b.issue.row ?? 0));
    const questions = this.#questions.toSorted((a, b) => b.question.rows.length - a.question.rows.length);
    return {
      issues: issues.map(({ issue }) => issue),
      issuePlaces: issues.map(({ at }) => at),
      questions: questions.map(({ question }) => ({
        ...question,
        args: { ...question.args, count: question.rows.length, rows: rowRanges(question.rows, SHOWN_RUNS) },
      })),
      questionPlaces: questions.map(({ at }) => at),
      notes: [...this.#notes.values()].map(({ code, column, args, rows: noted }) => {
        const rows = ascending(noted);
        return {
          code,
          column,
          rows,
          args: { column: column ?? "", ...args, count: rows.length, rows: rowRanges(rows, SHOWN_RUNS) },
        };
      }),
    };
  }
}

function finishIssue(entry: IssueEntry, rows: readonly number[]): ImportIssue {
  const row = rows[0] ?? null;
  const column = entry.column ?? null;
  const value = entry.value == null ? null : shownValue(entry.value);
  return {
    code: entry.code,
    row,
    rows,
    column,
    value,
    mend: entry.mend ?? null,
    args: {
      row: row ?? 0,
      column: column ?? "",
      value: value ?? "",
      ...entry.args,
      count: rows.length,
      rows: rowRanges(rows, SHOWN_RUNS),
    },
  };
}
