import { randomUUID } from "node:crypto";
import { redirect } from "next/navigation";

/** A form that is kept as it is typed into. */
export interface DraftForm {
  /** Where it is filled in. */
  readonly page: (studentId: string) => string;
  /** Whether it is about one student. */
  readonly about: "student" | "nobody";
  /**
   * Fields that the browser may keep while the server can't be reached; a name ending in `.` stands for all that begin
   * so. Never a name, a note, an aid, a film or a place of pain: a browser is read by whoever sits down at it.
   */
  readonly browserKeeps: readonly string[];
}

const CAMERA_NUMBERS = ["squareness", "offBy", "pointing", "across", "plumb", "lens", "hands", "distance", "beside"];
const CAMERA_SIDES = ["pointingSide", "acrossSide", "plumbSide", "besideSide", "frames", "shutter", "placement"];

/** The forms by the word with which the kind of their drafts begins. A new form is one more line. */
export const DRAFT_FORMS: Readonly<Record<string, DraftForm>> = {
  "session-form": {
    page: (studentId) => `/students/${studentId}/sessions/new`,
    about: "student",
    browserKeeps: [
      "r.",
      "day",
      "clubGroup",
      "circumstance",
      "daysSincePractice",
      "solid",
      "balls",
      ...[...CAMERA_NUMBERS, ...CAMERA_SIDES].map((name) => `${name}.`),
    ],
  },
  // Of the students' own fields the readings alone: what else begins with their ids may be a note.
  "group-form": {
    page: () => "/record/group",
    about: "nobody",
    browserKeeps: [
      "r.",
      "day",
      "clubGroup",
      "circumstance",
      ...[...CAMERA_NUMBERS, ...CAMERA_SIDES].map((name) => `${name}.`),
    ],
  },
  "student-form": { page: () => "/students/new", about: "nobody", browserKeeps: [] },
  "event-form": {
    page: (studentId) => `/students/${studentId}/events/new`,
    about: "student",
    browserKeeps: ["day"],
  },
  "drill-form": {
    page: (studentId) => `/students/${studentId}/drills/new`,
    about: "student",
    browserKeeps: ["start", "reps", "minutes", "daysAWeek"],
  },
  "practice-form": {
    page: (studentId) => `/students/${studentId}/practice`,
    about: "student",
    browserKeeps: ["minutes.", "balls."],
  },
  "read-back-form": {
    page: (studentId) => `/students/${studentId}/read-back`,
    about: "student",
    browserKeeps: [],
  },
};

const DROPPED = "dropped ";

/** The kind under which a form's drafts are kept. */
export function kindOf(form: string, studentId: string): string {
  return DRAFT_FORMS[form]?.about === "student" ? `${form} ${studentId}` : form;
}

/** The form and the student of a kind; dropped ones have a mark before it. Null: no form that is kept while typing. */
export function formOfKind(kind: string): { readonly form: string; readonly studentId: string } | null {
  const [form = "", studentId = ""] = undroppedKind(kind).split(" ");
  return Object.hasOwn(DRAFT_FORMS, form) ? { form, studentId } : null;
}

/** Whose record a kind is about; null: nobody's, or a form of another sort. */
export function studentOfKind(kind: string): string | null {
  const found = formOfKind(kind);
  return found && DRAFT_FORMS[found.form]?.about === "student" ? found.studentId : null;
}

export function droppedKind(kind: string): string {
  return `${DROPPED}${undroppedKind(kind)}`;
}

export function undroppedKind(kind: string): string {
  return kind.startsWith(DROPPED) ? kind.slice(DROPPED.length) : kind;
}

export function isDropped(kind: string): boolean {
  return kind.startsWith(DROPPED);
}

const ID = /^[0-9a-f]{8}(?:-[0-9a-f]{4}){3}-[0-9a-f]{12}$/;

export function isDraftId(text: string | undefined): text is string {
  return text !== undefined && ID.test(text);
}

/**
 * The id of a form, from its address. A form without one is led to an address with a new one, so that a reload, Back and
 * a later visit are the same form, with scripts and without.
 *
 * @param more what else the address says; undefined: it doesn't say that
 */
export function requireDraftId(
  page: string,
  wished: string | undefined,
  dropped?: string,
  more: Readonly<Record<string, string | undefined>> = {},
): string {
  if (isDraftId(wished)) return wished;
  const said = Object.entries({ ...more, dropped: isDraftId(dropped) ? dropped : undefined }).flatMap(
    ([name, value]) => (value === undefined ? [] : [[name, value]]),
  );
  return redirect(`${page}?${new URLSearchParams([["draft", randomUUID()], ...said])}`);
}
