import type { Fundamental } from "@/lib/domain/fundamental";
import type { RereadPair } from "@/lib/domain/reread";
import { buildCsv } from "./csv";

const COLUMNS = [
  "fundamental",
  "unit",
  "level",
  "first reader",
  "reader",
  "first",
  "second",
  "second less first",
] as const;

/** A difference without the dust of binary fractions. */
function difference({ first, again }: RereadPair): number {
  return Math.round((again - first) * 1e9) / 1e9;
}

/** Every pair of finished draws; no student, day or film, so that a reader who has still to read learns nothing. */
export function buildRereadCsv(
  read: readonly { readonly fundamental: Fundamental; readonly pairs: readonly RereadPair[] }[],
): string {
  const rows = read.flatMap(({ fundamental, pairs }) =>
    [...pairs]
      .sort((a, b) => a.first - b.first || a.again - b.again)
      .map((pair) => [
        fundamental.id,
        fundamental.unit,
        pair.level,
        pair.firstReader,
        pair.reader,
        pair.first,
        pair.again,
        difference(pair),
      ]),
  );
  return buildCsv(COLUMNS, rows);
}
