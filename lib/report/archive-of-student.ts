import type { Archive, ArchivedStudent } from "@/lib/domain/archive";

/** A thing with whose it is. */
export interface OfStudent<T> {
  readonly student: ArchivedStudent;
  readonly row: T;
}

/** Rows of every student, each with whose it is. */
export function ofAll<T>(archive: Archive, rows: (student: ArchivedStudent) => readonly T[]): OfStudent<T>[] {
  return archive.students.flatMap((student) => rows(student).map((row) => ({ student, row })));
}

/** The alias that stands first in a row. */
export const alias = ({ student }: OfStudent<unknown>): string => student.alias;
