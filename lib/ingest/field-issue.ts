/** What is wrong with one field of a form: its name, and a code with arguments that words are kept for. */
export interface FieldIssue {
  readonly field: string;
  readonly code: string;
  readonly args: Readonly<Record<string, string | number>>;
}

/** A form read: its value, or everything that is wrong with it. */
export type FormOutcome<T> =
  | { readonly kind: "ok"; readonly value: T }
  | { readonly kind: "issues"; readonly issues: readonly FieldIssue[] };

/** The text of a field, in one normal form, without blanks around; absent or a file: empty. */
export function fieldText(data: FormData, name: string): string {
  const value = data.get(name);
  return typeof value === "string" ? value.normalize("NFC").trim() : "";
}
