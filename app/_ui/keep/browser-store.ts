import type { KeepModel } from "@/lib/report/keep-model";

/** Names and values in the order of the form. */
export type Entries = readonly (readonly [string, string])[];

/** What a browser holds of a form that could not be sent. */
export interface Stored {
  readonly draft: string;
  readonly form: string;
  readonly studentId: string;
  readonly of: string;
  /** ISO. */
  readonly at: string;
  readonly entries: Entries;
}

const PREFIX = "proofband-unsent-";

/** A number, a date, a side or a word of a list: short, and without room for a name. */
const PLAIN = /^[\w\s.,:/°%+\-−–]{0,24}$/;

/** A cell holds a number or a mark for one that can't be read; words typed there by mistake stay out. */
const CELL = /^[\d\s.,°%+\-−–]{0,12}(?:[a-z]{1,3}(?:\/[a-z])?)?$/i;

function mayKeep(name: string, value: string, allowed: readonly string[]): boolean {
  if (!allowed.some((each) => (each.endsWith(".") ? name.startsWith(each) : name === each))) return false;
  return (/^[rv]\./.test(name) ? CELL : PLAIN).test(value);
}

// A browser may forbid storing, or be full: then there is only the open page.
function attempt<T>(work: () => T, otherwise: T): T {
  try {
    return work();
  } catch {
    return otherwise;
  }
}

/** Keeps in the browser what may be kept there; says whether anything was. */
export function storeUnsent(keep: KeepModel, entries: Entries, at: string): "some" | "nothing" {
  const allowed = entries.filter(([name, value]) => value !== "" && mayKeep(name, value, keep.browserKeeps));
  if (allowed.length === 0) return "nothing";
  const { draft, form, studentId, of } = keep;
  const stored: Stored = { draft, form, studentId, of, at, entries: allowed };
  return attempt(() => {
    localStorage.setItem(PREFIX + draft, JSON.stringify(stored));
    return "some";
  }, "nothing");
}

/** Takes out of the browser what was sent or dropped. */
export function forgetUnsent(draft: string): void {
  attempt(() => localStorage.removeItem(PREFIX + draft), undefined);
}

function readStored(key: string): Stored[] {
  return attempt(() => {
    const read = JSON.parse(localStorage.getItem(key) ?? "") as Partial<Stored>;
    return typeof read.draft === "string" && Array.isArray(read.entries) ? [read as Stored] : [];
  }, []);
}

/** What this browser still holds of the same form: this one's first. */
export function findUnsent(keep: KeepModel): readonly Stored[] {
  const keys = attempt(() => Object.keys(localStorage).filter((key) => key.startsWith(PREFIX)), []);
  return keys
    .flatMap(readStored)
    .filter(({ form, studentId, of = "" }) => form === keep.form && studentId === keep.studentId && of === keep.of)
    .sort((a, b) => Number(b.draft === keep.draft) - Number(a.draft === keep.draft) || b.at.localeCompare(a.at));
}
