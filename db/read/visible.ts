import { and, eq, inArray, type SQL } from "drizzle-orm";
import type { AnySQLiteColumn } from "drizzle-orm/sqlite-core";
import type { AcademyScope, StudentScope } from "@/lib/domain/scope";
import { student } from "../schema";

/** The condition under which a student of a query may be seen; every list of students, or of what is theirs, carries it. */
export function visible(scope: AcademyScope): SQL | undefined {
  const mine = eq(student.academyId, scope.academyId);
  return scope.students === "all" ? mine : and(mine, inArray(student.id, [...scope.students]));
}

/** The same of a row of a student's, or that it is one student's where the scope is theirs; `student` is joined to the query. */
export function within(scope: AcademyScope | StudentScope, studentId: AnySQLiteColumn): SQL | undefined {
  return "studentId" in scope ? eq(studentId, scope.studentId) : visible(scope);
}

/** Whether a scope reaches a student of its academy. */
export function isVisible(scope: AcademyScope, studentId: string): boolean {
  return scope.students === "all" || scope.students.includes(studentId);
}

/** The same for a query written as text: `student` is among its tables, and `seen` among what it is given. */
export const VISIBLE_SQL = "(@seen IS NULL OR student.id IN (SELECT value FROM json_each(@seen)))";

/** What such a query is given. */
export function seenBy({ students }: AcademyScope): { readonly seen: string | null } {
  return { seen: students === "all" ? null : JSON.stringify(students) };
}
