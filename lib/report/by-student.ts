/** Rows of many students, by the student's id, each in the order in which it came. */
export function byStudent<Row extends { readonly studentId: string }>(
  rows: readonly Row[],
): ReadonlyMap<string, readonly Row[]> {
  const kept = new Map<string, Row[]>();
  for (const row of rows) {
    const own = kept.get(row.studentId);
    if (own) own.push(row);
    else kept.set(row.studentId, [row]);
  }
  return kept;
}
