/** Names and values in the order of the form. */
export type Entries = readonly (readonly [string, string])[];

/** What another window typed into the same form; it waits until somebody chooses. */
export interface AsideEntries {
  readonly writer: string;
  readonly at: string;
  readonly entries: Entries;
}

/** What was typed into a form, with what was wrong by field when it was last sent. */
export interface FormDraft {
  readonly entries: Entries;
  readonly errors: Readonly<Record<string, string>>;
  readonly refusal: string;
  /** The page that kept it last, and its how-manieth keep that was. */
  readonly writer?: string;
  readonly turn?: number;
  readonly aside?: readonly AsideEntries[];
}

/** A form that was not saved; what was typed is kept under that id. */
export interface Refused {
  readonly kind: "refused";
  readonly draftId: string;
}

/** Fields by which a form is led, not filled; its page is told them. */
export const LEADING: readonly string[] = ["draft", "version", "writer", "turn", "form", "studentId", "settles"];

/** What was typed, without what leads the form; `$…` is the framework's, `pick.…` an answer about two windows. */
export function typedEntries(data: Iterable<readonly [string, unknown]>): Entries {
  return [...data].flatMap(([name, value]) =>
    typeof value === "string" && !LEADING.includes(name) && !name.startsWith("$") && !name.startsWith("pick.")
      ? [[name, value] as const]
      : [],
  );
}
