import type { Fundamental } from "@/lib/domain/fundamental";
import { closestWord } from "./closest-word";
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
  readonly why: "unknown" | "blank" | "doubled" | "other-form" | "derived" | null;
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
 */
export function readColumns(
  headers: readonly string[],
  fundamentals: readonly Fundamental[],
  taken: ReadonlySet<number>,
): ReadColumns {
  const words = fundamentalWords(fundamentals);
  const meant = headers.map((header, at) => {
    const meaning = header.trim() === "" ? null : meaningOf(header, words);
    const suggestion = meaning || header.trim() === "" ? null : suggestionFor(header, words);
    if (!meaning && suggestion && taken.has(at)) {
      const unit = headerReadings(header).find((reading) => reading.unit)?.unit ?? null;
      return typeof suggestion === "string"
        ? { meaning: { field: suggestion, fundamental: null, unit }, suggestion }
        : { meaning: { field: "measure" as const, fundamental: suggestion, unit }, suggestion };
    }
    return { meaning, suggestion };
  });
  const has = (field: Meaning["field"]) => meant.some(({ meaning }) => meaning?.field === field);
  const isPlainMeasure = ({ meaning }: { meaning: Meaning | null }) =>
    meaning?.field === "measure" && meaning.fundamental?.derivedFrom === null;
  const form = has("fundamental") && has("value") ? "long" : meant.some(isPlainMeasure) ? "wide" : null;
  // What is worked out from two other fundamentals is never read from a file.
  const isDerived = (meaning: Meaning) => meaning.field === "measure" && meaning.fundamental?.derivedFrom != null;
  const foreign: readonly Meaning["field"][] = form === "long" ? ["measure"] : ["fundamental", "value", "unit"];
  const seen = new Set<string>();
  const columns = meant.map(({ meaning, suggestion }, at): ReadColumn => {
    const header = shownValue(headers[at] ?? "");
    const left = (why: ReadColumn["why"]): ReadColumn => ({
      header,
      at,
      field: null,
      fundamental: null,
      unit: null,
      why,
      suggestion: meaning ? null : suggestion,
    });
    if (!meaning) return left(header.trim() === "" ? "blank" : "unknown");
    if (form !== null && foreign.includes(meaning.field)) return left("other-form");
    if (isDerived(meaning)) return left("derived");
    const name = `${meaning.field} ${meaning.fundamental?.id ?? ""}`;
    if (seen.has(name)) return left("doubled");
    seen.add(name);
    return { header, at, ...meaning, why: null, suggestion };
  });
  return { form, columns };
}
