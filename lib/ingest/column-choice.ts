import type { Fundamental, Unit } from "@/lib/domain/fundamental";
import { FIELDS, type Field } from "./column-word";
import type { ImportAnswers } from "./import-preview";
import { FILE_UNITS, type FileUnit, isConvertible, isOwnUnit } from "./parse-unit";

/** What somebody said a column is; absent parts are as guessed. */
export interface ColumnChoice {
  readonly meaning?: { readonly field: Field | "measure"; readonly fundamental: Fundamental | null } | "leave-out";
  readonly unit?: FileUnit;
}

/** Ids under which the answers hold what a column is and in what unit; places count from 1. */
export const columnAnswer = (place: number): string => `map:${place}`;
export const unitAnswer = (place: number): string => `map-unit:${place}`;

/** A column's meaning as a form writes it: `field:alias`, `fundamental:hinge`, `sd:hinge` or `leave-out`. */
export function columnChoice(field: Field | "measure" | null, fundamental: Fundamental | null): string {
  if (field === null) return "leave-out";
  if (field === "measure") return `fundamental:${fundamental?.id ?? ""}`;
  return field === "cameraSd" && fundamental ? `sd:${fundamental.id}` : `field:${field}`;
}

function meaningOf(text: string, fundamentals: readonly Fundamental[]): ColumnChoice["meaning"] {
  if (text === "leave-out") return "leave-out";
  const [kind, id] = text.split(":", 2);
  const field = FIELDS.find((each) => each === id);
  if (kind === "field" && field) return { field, fundamental: null };
  const fundamental = fundamentals.find((each) => each.id === id);
  if (!fundamental) return undefined;
  return kind === "fundamental"
    ? { field: "measure", fundamental }
    : kind === "sd"
      ? { field: "cameraSd", fundamental }
      : undefined;
}

/** What was said of the column at a 0-based place; what names nothing known is passed over. */
export function choiceOf(at: number, answers: ImportAnswers, fundamentals: readonly Fundamental[]): ColumnChoice {
  const meaning = answers.get(columnAnswer(at + 1))?.option;
  const unit = FILE_UNITS.find((each) => each === answers.get(unitAnswer(at + 1))?.option);
  return { meaning: meaning === undefined ? undefined : meaningOf(meaning, fundamentals), unit };
}

/** Units that values of a fundamental may be written in, its own first; percent is left to the fundamental's own. */
export function unitsFor(own: Unit): readonly FileUnit[] {
  const others = FILE_UNITS.filter((unit) => !isOwnUnit(unit, own) && isConvertible(unit, own));
  return [own as FileUnit, ...others];
}
