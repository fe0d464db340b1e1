import type { Database } from "@/db/client";
import { readChargedStudents } from "@/db/read/people";
import type { RecordView } from "@/db/write/record-views";
import type { Role } from "@/lib/domain/person";
import type { StudentScope } from "@/lib/domain/scope";
import { instantOf } from "../clock";
import { keepLooks } from "./look-queue";
import type { RowKey, RowOf } from "./matrix";

/**
 * Files that hold records of many students: each of them was looked at. A page that lists students opens no record, so that it
 * leaves no entry: the roster is how a coach gets to a student, and sixty entries at each of its openings would bury those that
 * a family asks for. What names no student, or no value and no verdict, leaves none either.
 */
export const MANY_ROWS = [
  "GET /api/archive",
  "GET /api/roster/csv",
  "GET /api/tables roster",
] as const satisfies readonly RowOf<"academy">[];

export type ManyRow = (typeof MANY_ROWS)[number];

/** A program on this machine that shows records, in the place of a row of the matrix. */
export type ProgramPlace = "npm run export" | "npm run tracks";

/** Pages that are made to be printed: when they are, no server is told. */
const PRINTED: readonly RowKey[] = ["/students/[studentId]/report", "/students/[studentId]/sessions/sheet"];

/** Who looks, as far as it is kept. */
export interface Looker {
  readonly db: Database;
  /** Null: a program on this machine. */
  readonly userId: string | null;
  readonly roles: readonly Role[];
  readonly name: string;
  readonly today: string;
  readonly academy: { readonly fixedToday: string | null };
}

/** What a look at a place is; null: something was pressed there, which is no look. */
export function lookAt(place: RowKey | ProgramPlace): RecordView["what"] | null {
  if (place.startsWith("GET ") || place.startsWith("npm ")) return "file";
  if (place.includes(" ")) return null;
  return PRINTED.includes(place as RowKey) ? "print" : "page";
}

/** As what somebody reaches a student: as the coach who has the student in charge, as a director, or by helping a coach. */
function roleFor({ db, userId, roles, today }: Looker): (studentId: string) => RecordView["role"] {
  if (userId === null) return () => "program";
  const charged = new Set(roles.includes("coach") ? readChargedStudents(db, [userId], today) : []);
  return (studentId) => {
    if (charged.has(studentId)) return "coach";
    return roles.includes("director") ? "director" : "assistant";
  };
}

/** Keeps that somebody looked at students' records at a place; see `keepLooks`. No reading and no verdict stands in an entry. */
export function noteLooks(looker: Looker, students: readonly StudentScope[], place: RowKey | ProgramPlace): void {
  const what = lookAt(place);
  if (what === null || students.length === 0) return;
  const { db, userId, name, academy } = looker;
  const as = roleFor(looker);
  // A program is nobody: whoever can run one on this machine can do so under any name.
  const view = { who: userId === null ? place : name, what, place, viewedAt: instantOf(academy) };
  keepLooks(
    db,
    students.map((scope) => ({ scope, view: { ...view, role: as(scope.studentId) } })),
  );
}
