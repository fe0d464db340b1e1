import type { Unit } from "@/lib/domain/fundamental";

/** Units that a file may name. `percent`: a bare %, either of ours; `fraction`: 0.12 for 12 %. */
export const FILE_UNITS = ["deg", "pct-stance", "pct-span", "percent", "rad", "fraction", "cm", "mm", "inch"] as const;

export type FileUnit = (typeof FILE_UNITS)[number];

const WORDS: ReadonlyMap<string, FileUnit> = new Map([
  ...["deg", "degs", "degree", "degrees", "°", "º", "˚"].map((word) => [word, "deg"] as const),
  ...["%", "percent", "per cent", "pct"].map((word) => [word, "percent"] as const),
  ...[
    "% of stance",
    "% stance",
    "% of stance width",
    "% stance width",
    "pct stance",
    "percent of stance",
    "pct of stance",
  ].map((word) => [word, "pct-stance"] as const),
  ...["% of span", "% span", "pct span", "%, chin to shoulder", "% chin to shoulder", "% chin shoulder"].map(
    (word) => [word, "pct-span"] as const,
  ),
  ...["rad", "rads", "radian", "radians"].map((word) => [word, "rad"] as const),
  ...["fraction", "share", "of 1"].map((word) => [word, "fraction"] as const),
  ...["cm", "centimetre", "centimetres", "centimeter", "centimeters"].map((word) => [word, "cm"] as const),
  ...["mm", "millimetre", "millimetres", "millimeter", "millimeters"].map((word) => [word, "mm"] as const),
  ...["in", "inch", "inches", '"', "″"].map((word) => [word, "inch"] as const),
]);

/** The unit that a text names; null when it names none that is known. */
export function parseUnit(text: string): FileUnit | null {
  return (
    WORDS.get(
      text
        .toLowerCase()
        .replace(/[\s_-]+/g, " ")
        .replace(/\.$/, "")
        .trim(),
    ) ?? null
  );
}

/** Whether a unit of a file is the fundamental's own. */
export function isOwnUnit(unit: FileUnit, own: Unit): boolean {
  return unit === own || (unit === "percent" && own !== "deg");
}

/**
 * A value of another unit in the fundamental's own.
 *
 * @param stanceWidthCm for lengths as % of stance width; null: not known
 * @returns null where the two can't be converted, or the stance width is missing
 */
export function convertUnit(value: number, from: FileUnit, own: Unit, stanceWidthCm: number | null): number | null {
  if (isOwnUnit(from, own)) return value;
  if (own === "deg") return from === "rad" ? (value * 180) / Math.PI : null;
  if (from === "fraction") return value * 100;
  const cm = from === "cm" ? value : from === "mm" ? value / 10 : from === "inch" ? value * 2.54 : null;
  return own === "pct-stance" && cm !== null && stanceWidthCm !== null ? (100 * cm) / stanceWidthCm : null;
}

/** Whether a value of that unit can become one of the fundamental's own unit at all. */
export function isConvertible(from: FileUnit, own: Unit): boolean {
  return convertUnit(1, from, own, 40) !== null;
}

/** Whether the conversion rests on a stance width. */
export function needsStanceWidth(from: FileUnit, own: Unit): boolean {
  return convertUnit(1, from, own, null) === null && isConvertible(from, own);
}
