import { columnAnswer, unitAnswer } from "./column-choice";
import type { ImportAnswer, ImportAnswers, ImportPreview } from "./import-preview";

/** Questions whose answer belongs to whoever writes the files, and not to what one file holds. */
const OF_THE_SOURCE = /^(?:map:\d+|map-unit:\d+|column:\d+|left-sign|date-order|day-number|comma|point)$/;

/** Whether an answer is remembered with its source. */
export function isSourceAnswer(id: string): boolean {
  return OF_THE_SOURCE.test(id);
}

/**
 * What the next file with the same heads starts from: what each column was taken for, the units that were chosen, and
 * the answers about signs, the order of dates and the decimal mark.
 */
export function sourceAnswers(preview: Pick<ImportPreview, "questions" | "columns">): ImportAnswers {
  const kept = new Map<string, ImportAnswer>();
  const keep = (id: string, option: string): void => void kept.set(id, { option, fields: new Map() });
  for (const { id, answer } of preview.questions) if (answer !== null && isSourceAnswer(id)) keep(id, answer);
  for (const { place, field, choice, why, unitChosen } of preview.columns) {
    if (field !== null || why === "chosen") keep(columnAnswer(place), choice);
    if (unitChosen !== null) keep(unitAnswer(place), unitChosen);
  }
  return kept;
}
