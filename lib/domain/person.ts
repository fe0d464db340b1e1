/** What somebody who works in an academy may be; one person may be several. */
export const ROLES = ["owner", "director", "coach", "assistant"] as const;

/**
 * `owner`: runs the installation, its people and its copies, and sees no student. `director`: all of the academy. `coach`: the
 * students in their charge. `assistant`: enters values for a coach and reads no report.
 */
export type Role = (typeof ROLES)[number];

/** Somebody who works in an academy. */
export interface Person {
  readonly userId: string;
  readonly academyId: string;
  readonly name: string;
  readonly email: string;
  readonly roles: readonly Role[];
  /** The instant at which they left; null: they work here. */
  readonly endedAt: string | null;
}
