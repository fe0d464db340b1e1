declare const proven: unique symbol;

/**
 * Proof that the viewer may see and change one student's data. Only the access gate can mint it, so that a forgotten
 * check does not compile.
 */
export type StudentScope = { readonly academyId: string; readonly studentId: string; readonly [proven]: "student" };

/** Proof that the viewer may see and change an academy's own things: its roster, catalogue and files. */
export type AcademyScope = { readonly academyId: string; readonly [proven]: "academy" };
