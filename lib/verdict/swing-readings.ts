import type { Fundamental } from "@/lib/domain/fundamental";
import type { Reading } from "@/lib/domain/session";

/** What was read of one fundamental in one swing, in its unit. */
export interface SwingReading {
  readonly number: number;
  readonly read: number;
  /** The two readings of which it is the difference; null: it was read itself. */
  readonly parts: readonly [number, number] | null;
}

/**
 * Readings of one fundamental, one a swing, in the order of the swings; a derived one is the difference of its parts where
 * nobody read it itself.
 *
 * @param readings of one session, those in force; swings without a value are left out
 */
export function swingReadings(readings: readonly Reading[], fundamental: Fundamental): readonly SwingReading[] {
  const found = new Map<number, SwingReading>();
  for (const [number, read] of valuesOf(readings, fundamental.id)) found.set(number, { number, read, parts: null });
  if (fundamental.derivedFrom !== null) {
    const [minuend, subtrahend] = fundamental.derivedFrom;
    const second = valuesOf(readings, subtrahend);
    for (const [number, value] of valuesOf(readings, minuend)) {
      const other = second.get(number);
      if (other !== undefined && !found.has(number))
        found.set(number, { number, read: value - other, parts: [value, other] });
    }
  }
  return [...found.values()].sort((a, b) => a.number - b.number);
}

function valuesOf(readings: readonly Reading[], fundamentalId: string): Map<number, number> {
  const values = new Map<number, number>();
  for (const reading of readings)
    if (reading.fundamentalId === fundamentalId && reading.value !== null) values.set(reading.swing, reading.value);
  return values;
}
