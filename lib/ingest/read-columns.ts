import type { Fundamental } from "@/lib/domain/fundamental";
import { closestWord } from "./closest-word";
import type { ColumnChoice } from "./column-choice";
import { type Field, fieldOf, fieldWords, fundamentalWords } from "./column-word";
import { type FileUnit, parseUnit } from "./parse-unit";
import { shownValue, wordKey } from "./text-key";

/** A column and what it is taken for. */
export interface ReadColumn {
  readonly header: string;
  /** 0-based place in a row. */
  readonly at: number;
  /** `cameraSd` with a fundamental: the sd of that fundamental's camera error. */
  readonly field: Field | "measure" | null;
  readonly fundamental: Fundamental | null;
  /** Unit named in the header; null: none. */
  readonly unit: FileUnit | null;
  readonly why: "unknown" | "blank" | "doubled" | "other-form" | "derived" | "chosen" | null;
  /** Whether somebody said what the column is, and in which unit. */
  readonly said: "guessed" | "chosen";
  readonly unitSaid: "guessed" | "chosen";
  readonly suggestion: Field | Fundamental | null;
}

export interface ReadColumns {
  /** Null: neither a fundamental and value column, nor a column of a fundamental. */
  readonly form: "long" | "wide" | null;
  readonly columns: readonly ReadColumn[];
}

interface Meaning {
  readonly field: ReadColumn["field"];
  readonly fundamental: Fundamental | null;
  readonly unit: FileUnit | null;
}

interface Meant {
  readonly meaning: Meaning | null;
  readonly suggestion: Field | Fundamental | null;
}

const unitOf = (header: string): FileUnit | null =>
  headerReadings(header).find((reading) => reading.unit)?.unit ?? null;

/** Ways to take a unit off a header: in brackets, or as its last words. */
function headerReadings(header: string): readonly { readonly key: string; readonly unit: FileUnit | null }[] {
  const readings: { key: string; unit: FileUnit | null }[] = [{ key: wordKey(header), unit: null }];
  const bracket = /^(.*?)\s*[([{]([^)\]}]*)[)\]}]\s*$/s.exec(header);
  if (bracket) {
    const unit = parseUnit(bracket[2] ?? "");
    readings.push(
      unit ? { key: wordKey(bracket[1] ?? ""), unit } : { key: wordKey(`${bracket[1]} ${bracket[2]}`), unit: null },
    );
    if (!unit) readings.push({ key: wordKey(bracket[1] ?? ""), unit: null });
  }
  const words = wordKey(header.replaceAll(",", " ")).split(" ");
  for (let count = Math.min(4, words.length - 1); count >= 1; count--) {
    const unit = parseUnit(words.slice(-count).join(" "));
    if (unit) readings.push({ key: words.slice(0, -count).join(" "), unit });
  }
  readings.push({ key: words.join(" "), unit: null });
  return readings;
}

function meaningOf(header: string, words: ReadonlyMap<string, Fundamental>): Meaning | null {
  for (const { key, unit } of headerReadings(header)) {
    const field = fieldOf(key);
    if (field) return { field, fundamental: null, unit };
    const fundamental = words.get(key);
    if (fundamental) return { field: "measure", fundamental, unit };
    const sdOf = key.endsWith(" camera sd") ? words.get(key.slice(0, -" camera sd".length)) : undefined;
    if (sdOf) return { field: "cameraSd", fundamental: sdOf, unit };
  }
  return null;
}

function suggestionFor(header: string, words: ReadonlyMap<string, Fundamental>): Field | Fundamental | null {
  for (const { key } of headerReadings(header).toReversed()) {
    if (key.length < 4) continue;
    const found = closestWord<Field | Fundamental>(key, [...words, ...fieldWords()]);
    if (found) return found;
  }
  return null;
}

/**
 * What each column of a file is taken for, by ids and plain trade words. A column that nobody knows is left out in
 * sight; of two columns for one thing the first counts.
 *
 * @param taken columns (by 0-based place) of which somebody said that their suggestion is meant
 * @param choices by 0-based place, what somebody said a column is: it holds before any guess
 */
export function readColumns(
  headers: readonly string[],
  fundamentals: readonly Fundamental[],
  taken: ReadonlySet<number>,
  choices: readonly ColumnChoice[] = [],
): ReadColumns {
  const words = fundamentalWords(fundamentals);
  const meant = headers.map((header, at) => {
    const choice = choices[at];
    const guessed = guessedMeaning(header, at);
    const unit = choice?.unit ?? (guessed.meaning ? guessed.meaning.unit : unitOf(header));
    const said = choice?.meaning;
    if (said === "leave-out") return { meaning: null, suggestion: null };
    if (said) return { meaning: { ...said, unit }, suggestion: null };
    return { ...guessed, meaning: guessed.meaning && { ...guessed.meaning, unit } };
  });
  return sortOut(headers, meant, choices);

  function guessedMeaning(header: string, at: number): Meant {
    const meaning = header.trim() === "" ? null : meaningOf(header, words);
    const suggestion = meaning || header.trim() === "" ? null : suggestionFor(header, words);
    if (meaning || !suggestion || !taken.has(at)) return { meaning, suggestion };
    const unit = unitOf(header);
    return typeof suggestion === "string"
      ? { meaning: { field: suggestion, fundamental: null, unit }, suggestion }
      : { meaning: { field: "measure", fundamental: suggestion, unit }, suggestion };
  }
}

/** Lets each thing be in one column, those that somebody chose first, and leaves out what belongs to the other form. */
function sortOut(headers: readonly string[], meant: readonly Meant[], choices: readonly ColumnChoice[]): ReadColumns {
  const has = (field: Meaning["field"]) => meant.some(({ meaning }) => meaning?.field === field);
  const isPlainMeasure = ({ meaning }: { meaning: Meaning | null }) =>
    meaning?.field === "measure" && meaning.fundamental?.derivedFrom === null;
  const form = has("fundamental") && has("value") ? "long" : meant.some(isPlainMeasure) ? "wide" : null;
  // What is worked out from two other fundamentals is never read from a file.
  const isDerived = (meaning: Meaning) => meaning.field === "measure" && meaning.fundamental?.derivedFrom != null;
  const foreign: readonly Meaning["field"][] = form === "long" ? ["measure"] : ["fundamental", "value", "unit"];
  const nameOf = (meaning: Meaning): string => `${meaning.field} ${meaning.fundamental?.id ?? ""}`;
  const isSaid = (at: number): boolean => choices[at]?.meaning !== undefined;
  const chosen = new Set(meant.flatMap(({ meaning }, at) => (meaning && isSaid(at) ? [nameOf(meaning)] : [])));
  const seen = new Set<string>();
  const columns = meant.map(({ meaning, suggestion }, at): ReadColumn => {
    const header = shownValue(headers[at] ?? "");
    const said = {
      said: isSaid(at) ? ("chosen" as const) : ("guessed" as const),
      unitSaid: choices[at]?.unit === undefined ? ("guessed" as const) : ("chosen" as const),
    };
    const left = (why: ReadColumn["why"]): ReadColumn => ({
      header,
      at,
      field: null,
      fundamental: null,
      unit: null,
      why,
      ...said,
      suggestion: meaning ? null : suggestion,
    });
    if (!meaning && isSaid(at)) return left("chosen");
    if (!meaning) return left(header.trim() === "" ? "blank" : "unknown");
    if (form !== null && foreign.includes(meaning.field)) return left("other-form");
    if (isDerived(meaning)) return left("derived");
    const name = nameOf(meaning);
    if (seen.has(name) || (chosen.has(name) && !isSaid(at))) return left("doubled");
    seen.add(name);
    return { header, at, ...meaning, why: null, ...said, suggestion };
  });
  return { form, columns };
}
