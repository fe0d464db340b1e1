import { and, asc, eq, isNotNull, isNull } from "drizzle-orm";
import type { Consent } from "@/lib/domain/consent";
import type { Language } from "@/lib/domain/language";
import type { AcademyScope, StudentScope } from "@/lib/domain/scope";
import type { Student } from "@/lib/domain/student";
import type { Database } from "../client";
import { height, student } from "../schema";
import { consent } from "../schema-privacy";
import { visible } from "./visible";

/** A student on file; the revision grows with every change of the student's data. */
export type FiledStudent = Student & {
  readonly language: Language;
  readonly revision: number;
  readonly createdAt: string;
  /** The day on which the student left; null: is here. */
  readonly departedOn: string | null;
};

/** A consent on file. */
export type FiledConsent = Consent & {
  readonly id: string;
  readonly studentId: string;
  readonly recordedAt: string;
  /** Who took it back; null: nobody, or nobody said. */
  readonly withdrawnBy: string | null;
};

/** A student's height on a day. */
export interface Height {
  readonly day: string;
  readonly cm: number;
}

const studentFields = {
  id: student.id,
  alias: student.alias,
  birthYear: student.birthYear,
  hand: student.hand,
  zone: student.zone,
  clubs: student.clubs,
  language: student.language,
  revision: student.revision,
  createdAt: student.createdAt,
  departedOn: student.departedOn,
};

const consentFields = {
  id: consent.id,
  studentId: consent.studentId,
  kind: consent.kind,
  givenBy: consent.givenBy,
  giverIs: consent.giverIs,
  from: consent.fromDay,
  until: consent.untilDay,
  withdrawnOn: consent.withdrawnOn,
  withdrawnBy: consent.withdrawnBy,
  recordedAt: consent.recordedAt,
};

/** Every student of the academy in the order of the aliases, without those who turned out to be another. */
export function readStudents(db: Database, scope: AcademyScope): FiledStudent[] {
  return db.orm
    .select(studentFields)
    .from(student)
    .where(and(visible(scope), isNull(student.mergedInto)))
    .orderBy(asc(student.alias))
    .all();
}

/** The same without whoever has left. */
export function readStudentsHere(db: Database, scope: AcademyScope): FiledStudent[] {
  return readStudents(db, scope).filter(({ departedOn }) => departedOn === null);
}

/**
 * Everybody by each name under which a file may know them: whoever turned out to be another stands there once more as the
 * other, under the own alias.
 */
export function readStudentNames(db: Database, scope: AcademyScope): FiledStudent[] {
  const all = readStudents(db, scope);
  const gone = db.orm
    .select({ alias: student.alias, into: student.mergedInto, id: student.id })
    .from(student)
    .where(and(eq(student.academyId, scope.academyId), isNotNull(student.mergedInto)))
    .orderBy(asc(student.alias))
    .all();
  const next = new Map(gone.map(({ id, into }) => [id, into ?? id]));
  const last = (id: string): string => (next.has(id) ? last(next.get(id) ?? "") : id);
  return [
    ...all,
    ...gone.flatMap(({ id, alias }) => {
      const other = all.find((each) => each.id === last(id));
      return other ? [{ ...other, alias }] : [];
    }),
  ];
}

/** @throws Error when the student isn't there: a proven scope names one who is */
export function readStudent(db: Database, scope: StudentScope): FiledStudent {
  const row = db.orm
    .select(studentFields)
    .from(student)
    .where(and(eq(student.id, scope.studentId), eq(student.academyId, scope.academyId)))
    .get();
  if (!row) throw new Error(`no such student: ${scope.studentId}`);
  return row;
}

/** For the gate, which mints the scopes: the academy that a student belongs to. */
export function readStudentAcademy(db: Database, studentId: string): string | undefined {
  return db.orm.select({ academyId: student.academyId }).from(student).where(eq(student.id, studentId)).get()
    ?.academyId;
}

/** The student whom this one turned out to be, after however many merges; null: none. */
export function readMergedInto(db: Database, scope: StudentScope): string | null {
  const last = db.sqlite
    .prepare<[string], string>(
      `WITH RECURSIVE led (id, step) AS (
         SELECT ?, 0 UNION ALL SELECT student.merged_into, step + 1 FROM student JOIN led ON student.id = led.id
         WHERE student.merged_into IS NOT NULL)
       SELECT id FROM led ORDER BY step DESC LIMIT 1`,
    )
    .pluck()
    .get(scope.studentId);
  return last === undefined || last === scope.studentId ? null : last;
}

/** Oldest first. */
export function readHeights(db: Database, scope: StudentScope): Height[] {
  return db.orm
    .select({ day: height.day, cm: height.cm })
    .from(height)
    .where(eq(height.studentId, scope.studentId))
    .orderBy(asc(height.day))
    .all();
}

/** In the order of their recording. */
export function readConsents(db: Database, scope: StudentScope): FiledConsent[] {
  return db.orm
    .select(consentFields)
    .from(consent)
    .where(eq(consent.studentId, scope.studentId))
    .orderBy(asc(consent.recordedAt), asc(consent.fromDay), asc(consent.id))
    .all();
}

/** Those of every student of the academy, by student, in the order of their recording. */
export function readAcademyConsents(db: Database, scope: AcademyScope): FiledConsent[] {
  return db.orm
    .select(consentFields)
    .from(consent)
    .innerJoin(student, eq(student.id, consent.studentId))
    .where(visible(scope))
    .orderBy(asc(consent.studentId), asc(consent.recordedAt), asc(consent.fromDay), asc(consent.id))
    .all();
}
