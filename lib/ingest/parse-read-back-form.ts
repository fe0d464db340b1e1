import { type FormOutcome, fieldText } from "./field-issue";
import { collectIssues, count, ticked } from "./form-fields";

/** The most swings that one read-back may hold: what a person reads in one sitting. */
export const MOST_READ_BACK = 120;

/** What is to be read back. */
export interface EnteredReadBack {
  readonly sessionIds: readonly string[];
  /** Swings of each film; null: all. */
  readonly each: number | null;
}

/**
 * A form that chooses earlier films to be read for a fundamental.
 *
 * @param films sessions whose film can be opened, with their swings that aren't read yet
 */
export function parseReadBackForm(
  data: FormData,
  films: readonly { readonly sessionId: string; readonly swings: number }[],
): FormOutcome<EnteredReadBack> {
  const { issues, add } = collectIssues();
  const ids = films.map((film) => film.sessionId);
  const sessionIds = ticked(data, "films", ids, add);
  if (issues.length === 0 && sessionIds.length === 0) add("films", "missing");
  const each = count(data, "each", MOST_READ_BACK, add);
  if (each === 0) add("each", "not-a-count", { low: 1, high: MOST_READ_BACK });
  const swings = films
    .filter((film) => sessionIds.includes(film.sessionId))
    .reduce((sum, film) => sum + Math.min(film.swings, each ?? film.swings), 0);
  if (issues.length === 0 && swings > MOST_READ_BACK) add("films", "too-many-swings", { swings, most: MOST_READ_BACK });
  return issues.length > 0 ? { kind: "issues", issues } : { kind: "ok", value: { sessionIds, each } };
}

/** A form without the fields that stand as the page came with them: another window may have filled them meanwhile. */
export function changedFields(data: FormData, places: readonly number[]): FormData {
  const changed = new FormData();
  for (const [name, value] of data) changed.append(name, value);
  for (const place of places) {
    const was = data.get(`was.${place}`);
    if (was !== null && fieldText(data, `v.${place}`) === was) changed.delete(`v.${place}`);
  }
  return changed;
}

/** Places of an open read-back whose field came back empty: what was typed there before is taken out again. */
export function emptiedPlaces(data: FormData, places: readonly number[]): readonly number[] {
  return places.filter((place) => data.has(`v.${place}`) && fieldText(data, `v.${place}`) === "");
}
