import type { RereadPair } from "@/lib/domain/reread";

/** One pair; read by "Wren" both times, at level (b), unless said otherwise. */
export function madePair(first: number, again: number, more: Partial<RereadPair> = {}): RereadPair {
  return { level: "b", firstReader: "Wren", reader: "Wren", first, again, ...more };
}

/** Pairs with these differences, on levels that go up by ten. */
export function madePairs(differences: readonly number[], more: Partial<RereadPair> = {}): RereadPair[] {
  return differences.map((difference, i) => madePair(10 * i, 10 * i + difference, more));
}
