import { type ColumnValue, type RecordChange, type RowState, rowName } from "./record-change";

/** Rows by `rowName`, each with its columns, those of the key among them. */
export type RowsByName = Map<string, Record<string, ColumnValue>>;

interface Step {
  readonly at: string;
  readonly order: number;
  readonly states: readonly RowState[];
}

/** What takes back each thing done after an instant: a change by its `before`, an undoing by its `after`. */
function stepsBack(changes: readonly RecordChange[], knownAt: string): readonly Step[] {
  const steps = changes.flatMap((change): Step[] => [
    { at: change.changedAt, order: change.id, states: [...change.before].reverse() },
    ...(change.undoneAt === null ? [] : [{ at: change.undoneAt, order: change.id + 0.5, states: change.after }]),
  ]);
  return steps
    .filter((step) => step.at > knownAt)
    .sort((a, b) => (a.at === b.at ? b.order - a.order : a.at < b.at ? 1 : -1));
}

/**
 * Puts rows back to how they were at an instant: every change and every undoing after it is taken back, latest first.
 *
 * @param rows as they are now, by name; they are changed in place
 * @param changes every change that touches one of the rows, in any order; rows of it that aren't among `rows` are made
 * @param knownAt ISO instant, the last one that is known
 */
export function revertChanges(rows: RowsByName, changes: readonly RecordChange[], knownAt: string): void {
  for (const { states } of stepsBack(changes, knownAt))
    for (const state of states) {
      const name = rowName(state);
      if (state.values === null) rows.delete(name);
      else rows.set(name, { ...rows.get(name), ...state.key, ...state.values });
    }
}
