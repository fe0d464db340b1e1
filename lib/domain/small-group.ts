/**
 * Fewest students of others over whom a count is told: of fewer, whoever knows some of them learns about the rest. Students; the
 * trust bar's own number ("counts of 5 and more"), common practice for small cells.
 */
export const SMALL_GROUP = 5;

/** A count over students, as far as it may be told. */
export interface ToldCount {
  /** Of the students whom the viewer may see, and of others where they are enough. */
  readonly told: number;
  /** Whether something of fewer than five others is left out. */
  readonly few: "left-out" | "none";
}

/**
 * Adds up what is counted of the viewer's own students and of others.
 *
 * @param own what is counted, of students whom the viewer may see
 * @param others the same of all others
 * @param otherStudents how many students those others are
 */
export function tellCount(own: number, others: number, otherStudents: number): ToldCount {
  if (otherStudents >= SMALL_GROUP) return { told: own + others, few: "none" };
  return { told: own, few: otherStudents > 0 ? "left-out" : "none" };
}
