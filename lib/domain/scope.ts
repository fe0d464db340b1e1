declare const proven: unique symbol;

/**
 * Proof that the viewer may see and change one student's data. Only the access gate can mint it, so that a forgotten
 * check does not compile.
 */
export type StudentScope = { readonly academyId: string; readonly studentId: string; readonly [proven]: "student" };

/**
 * Proof that the viewer may see and change an academy's own things: its roster, catalogue and files. Whatever lists students
 * lists those alone that the proof names.
 */
export type AcademyScope = {
  readonly academyId: string;
  /** Whose drafts, imports and preferences; null: a program's on this machine, which works for the academy as a whole. */
  readonly userId: string | null;
  /** Ids of the students whom the viewer may see; `all`: the whole academy. */
  readonly students: "all" | readonly string[];
  readonly [proven]: "academy";
};

/**
 * Proof that the viewer may know what hurts one student: who has the student in charge, and the family. Whoever lacks it reads
 * of a pause its days alone, and of practice nothing of pain.
 */
export type PainScope = { readonly studentId: string; readonly [proven]: "pain" };
