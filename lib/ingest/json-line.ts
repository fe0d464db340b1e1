import type { z } from "zod";

/** What is wrong with a line: the field, a code that words are kept for, and what stood there. */
export interface LineIssue {
  /** Path of the field, such as `sessions[2].captureSd`; empty: the whole line. */
  readonly field: string;
  readonly code: LineIssueCode;
  /** What stood there, as text, cut short. */
  readonly value: string;
}

/** Codes of what can be wrong with a line. */
export const LINE_ISSUE_CODES = [
  "not-json",
  "not-object",
  "missing",
  "not-text",
  "not-number",
  "too-large",
  "not-whole",
  "not-day",
  "below-zero",
  "not-days",
  "not-local",
  "not-above-zero",
  "not-below-one",
  "not-share",
  "not-list",
  "no-swings",
  "goal-order",
  "not-up-down",
  "not-yes-no",
  "not-kind",
  "weights-sum",
  "unknown-noise-model",
  "not-assigned",
  "not-hand",
  "ends-before",
  "other-unit",
] as const;

/** A code of what can be wrong with a line. */
export type LineIssueCode = (typeof LINE_ISSUE_CODES)[number];

/** Numbers beyond this overflow when they are squared and summed. */
export const LARGEST = 1e12;

function isCode(text: string): text is LineIssueCode {
  return (LINE_ISSUE_CODES as readonly string[]).includes(text);
}

/** For a zod type: a code where the field is absent, another where it is of the wrong kind. */
export function wrong(code: LineIssueCode): { error: (issue: { input?: unknown }) => string } {
  return { error: (issue) => (issue.input === undefined ? "missing" : code) };
}

// NaN and Infinity are no JSON, but naming the field that holds one helps more than refusing the line as a whole.
function quoteNonNumbers(text: string): string {
  return text.replace(/([:,[]\s*)(-?(?:NaN|Infinity))(?=\s*[,}\]])/g, '$1"$2"');
}

function parseJson(text: string): { readonly value: unknown; readonly strict: "json" | "mended" } | null {
  try {
    return { value: JSON.parse(text), strict: "json" };
  } catch {
    try {
      return { value: JSON.parse(quoteNonNumbers(text)), strict: "mended" };
    } catch {
      return null;
    }
  }
}

function show(value: unknown): string {
  const text = typeof value === "string" ? value : (JSON.stringify(value) ?? "");
  return text.length > 60 ? `${text.slice(0, 57)}...` : text;
}

function at(value: unknown, path: readonly PropertyKey[]): unknown {
  return path.reduce<unknown>(
    (inner, key) =>
      inner !== null && typeof inner === "object" ? (inner as Record<PropertyKey, unknown>)[key] : undefined,
    value,
  );
}

function pathText(path: readonly PropertyKey[]): string {
  return path.reduce<string>((text, key) => {
    if (typeof key === "number") return `${text}[${key}]`;
    return text === "" ? String(key) : `${text}.${String(key)}`;
  }, "");
}

/** A line read by a schema whose messages are codes, or its first issue, with the id where one can be read. */
export type LineOutcome<T> =
  | { readonly kind: "ok"; readonly value: T }
  | { readonly kind: "issue"; readonly id: string | null; readonly issue: LineIssue };

/**
 * Reads one line of newline-delimited JSON.
 *
 * @param idField the field that names the line; where it is a readable text it comes back beside an issue
 */
export function parseJsonLine<T>(text: string, schema: z.ZodType<T>, idField: string): LineOutcome<T> {
  const parsed = parseJson(text);
  if (parsed === null) {
    const id = new RegExp(`"${idField}"\\s*:\\s*("(?:[^"\\\\]|\\\\.)*")`).exec(text)?.[1];
    const read = id === undefined ? null : parseJson(id);
    return {
      kind: "issue",
      id: typeof read?.value === "string" ? read.value : null,
      issue: { field: "", code: "not-json", value: show(text) },
    };
  }
  const { value } = parsed;
  const id = at(value, [idField]);
  const readableId = typeof id === "string" ? id : null;
  if (value === null || typeof value !== "object" || Array.isArray(value))
    return { kind: "issue", id: null, issue: { field: "", code: "not-object", value: show(value) } };
  const checked = schema.safeParse(value);
  if (checked.success && parsed.strict === "json") return { kind: "ok", value: checked.data };
  const first = checked.error?.issues[0];
  if (first === undefined)
    return { kind: "issue", id: readableId, issue: { field: "", code: "not-json", value: show(text) } };
  return {
    kind: "issue",
    id: readableId,
    issue: {
      field: pathText(first.path),
      code: isCode(first.message) ? first.message : "not-object",
      value: show(at(value, first.path)),
    },
  };
}
