/**
 * One reading of a swing and fundamental is in force: the first by the session's reader, with the value of its latest
 * correction. Read again or read by another, it measures readers and enters no verdict. Taken out (`void`) by its latest
 * correction, it has no value, and `stands` says so.
 *
 * `known` filters by the hour at which rows were entered, for what was known then.
 */
export function inForceSql(known: "now" | "then"): {
  readonly columns: string;
  readonly tables: string;
  readonly stands: string;
} {
  const correctedBy = known === "then" ? "AND later.corrected_at <= :knownAt" : "";
  const enteredBy = known === "then" ? "AND reading.entered_at <= :knownAt" : "";
  return {
    stands: "correction.kind IS NOT 'void'",
    columns: "iif(correction.id IS NULL, reading.value, correction.value)",
    tables: `reading
      JOIN session ON session.id = reading.session_id AND session.reader = reading.reader AND reading.reread = 0 ${enteredBy}
      LEFT JOIN correction ON correction.id =
        (SELECT max(later.id) FROM correction AS later WHERE later.reading_id = reading.id ${correctedBy})`,
  };
}
