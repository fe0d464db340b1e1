import { isSourceAnswer } from "@/lib/ingest/source-answers";
import type { ImportHead } from "./import-desk";
import { OWN_UNIT } from "./import-mapping";

/** Fields of the columns' form; beside each stands what it showed, so that only what was changed counts as said. */
const COLUMN_FIELD = /^answer:map(?:-unit)?:\d+$/;
const SHOWN = "shown:";

export interface GatheredAnswers {
  readonly answers: ReadonlyMap<string, string>;
  /** Whether a column was changed: then its preview has to be seen before anything is saved. */
  readonly columns: "changed" | "same";
}

/** The answers of a sent preview, together with what was said of its columns before. */
export function gatherAnswers(head: ImportHead, data: FormData): GatheredAnswers {
  const answers = new Map(head.answers.filter(([name]) => COLUMN_FIELD.test(name)));
  let columns: GatheredAnswers["columns"] = "same";
  // Meanings before units, so that a unit changed together with its column holds.
  const sent = [...data].sort(([a], [b]) => Number(a.includes("-unit:")) - Number(b.includes("-unit:")));
  for (const [name, value] of sent) {
    if (!name.startsWith("answer") || typeof value !== "string") continue;
    if (!COLUMN_FIELD.test(name)) {
      answers.set(name, value);
      continue;
    }
    if (data.get(`${SHOWN}${name}`) === value) continue;
    columns = "changed";
    // A unit was said of what the column was before.
    if (name.startsWith("answer:map:")) answers.delete(name.replace("answer:map:", "answer:map-unit:"));
    if (value === OWN_UNIT) answers.delete(name);
    else answers.set(name, value);
  }
  return { answers, columns };
}

/** What is left of the answers when the source is forgotten: all that belongs to this file alone. */
export function withoutSource(answers: ReadonlyMap<string, string>): ReadonlyMap<string, string> {
  return new Map([...answers].filter(([name]) => !isSourceAnswer(name.replace(/^answer(?:-\w+)?:/, ""))));
}
