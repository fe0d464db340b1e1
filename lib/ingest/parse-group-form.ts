import type { EnteredSession } from "@/lib/domain/session-entry";
import type { Student } from "@/lib/domain/student";
import { type FieldIssue, type FormOutcome, fieldText } from "./field-issue";
import { parseSessionForm, type SessionFormContext } from "./parse-session-form";

/** Whose values a group's form holds. */
export type GroupStudent = Pick<Student, "id" | "birthYear" | "hand">;

/** What a group session's form is read against. */
export interface GroupFormContext extends Omit<SessionFormContext, "birthYear" | "hand"> {
  readonly students: readonly GroupStudent[];
  /** Names the occasion, and the placement that its films share. */
  readonly groupId: string;
}

/** One student's session as it comes in with a group's. */
export interface GroupEntry {
  readonly studentId: string;
  readonly session: EnteredSession;
}

/** Fields of a single session's form that stand once for each student; any cell of the grid does too. */
const OWN_FIELDS = ["daysSincePractice", "solid", "balls", "note", "absent"];

/** Before the name of a cell: its unusual value is right. */
const RIGHT = "ok.";

/** The name in a group's form of a student's field; a cell of the grid goes on beginning with `r.`, as every reading does. */
export function groupName(studentId: string, field: string): string {
  if (field.startsWith(RIGHT)) return `${RIGHT}${groupName(studentId, field.slice(RIGHT.length))}`;
  return field.startsWith("r.") ? `r.@${studentId}.${field.slice(2)}` : `s.${studentId}.${field}`;
}

/** The same name as the student's own form has it; null: it is another student's, or what all share. */
export function ownName(studentId: string, name: string): string | null {
  if (name.startsWith(RIGHT)) {
    const named = ownName(studentId, name.slice(RIGHT.length));
    return named === null ? null : `${RIGHT}${named}`;
  }
  const [cell, field] = [`r.@${studentId}.`, `s.${studentId}.`];
  if (name.startsWith(cell)) return `r.${name.slice(cell.length)}`;
  return name.startsWith(field) ? name.slice(field.length) : null;
}

/**
 * A group session's form: one date, club group, circumstance and film check, and for each student a grid of readings and the
 * shots, named by `groupName` as in a single session's form.
 *
 * Each student's part is read as a single session would be. A student without a reading is asked about, and left out only
 * where the form says that the student was not filmed. All films of a view share one placement: the one that is named, else
 * one of this group.
 *
 * @returns one entry a student who was filmed, in their order; or every issue, once each
 */
export function parseGroupForm(data: FormData, context: GroupFormContext): FormOutcome<readonly GroupEntry[]> {
  const issues = new Map<string, FieldIssue>();
  const entries: GroupEntry[] = [];
  for (const student of context.students) {
    const own = ownForm(data, student.id);
    const absent = fieldText(own, "absent") === "yes";
    const { birthYear, hand } = student;
    const parsed = parseSessionForm(own, { ...context, birthYear, hand });
    const found = parsed.kind === "issues" ? parsed.issues : [];
    for (const issue of found) if (!absent || !isOwn(issue.field)) note(issues, issue, student.id);
    if (absent && hasReadings(own)) note(issues, { field: "absent", code: "absent-but-read", args: {} }, student.id);
    if (parsed.kind === "ok" && !absent)
      entries.push({ studentId: student.id, session: asOneOf(parsed.value, context.groupId) });
  }
  if (issues.size === 0 && entries.length === 0)
    issues.set("students", { field: "students", code: "nobody", args: {} });
  return issues.size > 0 ? { kind: "issues", issues: [...issues.values()] } : { kind: "ok", value: entries };
}

/** What all share and what is the student's, as the form of a single session. */
function ownForm(data: FormData, studentId: string): FormData {
  const own = new FormData();
  for (const [name, value] of data) {
    const named = ownName(studentId, name);
    if (named !== null) own.append(named, value);
    else if (!/^(?:ok\.)?(?:s\.|r\.@)/.test(name)) own.append(name, value);
  }
  return own;
}

function isOwn(field: string): boolean {
  return field.startsWith("r.") || OWN_FIELDS.includes(field);
}

function hasReadings(own: FormData): boolean {
  return [...own.keys()].some((name) => name.startsWith("r.") && fieldText(own, name) !== "");
}

/** Keeps an issue under the field's name in the group's form; that nothing was read is asked at the box for the absent. */
function note(issues: Map<string, FieldIssue>, issue: FieldIssue, studentId: string): void {
  const own = issue.code === "no-readings" ? { ...issue, field: "absent", code: "nothing-read" } : issue;
  const field = isOwn(own.field) ? groupName(studentId, own.field) : own.field;
  const key = `${field} ${own.code}`;
  if (!issues.has(key)) issues.set(key, { ...own, field });
}

function asOneOf(session: EnteredSession, groupId: string): EnteredSession {
  const label = `group ${session.day} ${groupId.slice(0, 8)}`;
  return {
    ...session,
    groupId,
    captures: session.captures.map((capture) => ({
      ...capture,
      placement: "same",
      placementLabel: capture.placementLabel ?? label,
    })),
  };
}
