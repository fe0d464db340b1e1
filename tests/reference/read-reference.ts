import { readFileSync } from "node:fs";
import path from "node:path";
import { expect } from "vitest";

/** How far from `expected` a result may be: a share of it, an amount, or an amount where it is 0. */
export interface Tolerance {
  readonly rel?: number;
  readonly abs?: number;
  readonly zero_abs?: number;
  readonly [other: string]: number | undefined;
}

export interface ReferenceCase<Input, Expected> {
  readonly id: string;
  readonly source: { readonly author?: string; readonly name?: string };
  readonly input: Input;
  readonly expected: Expected;
  readonly tolerance: Tolerance;
  readonly [other: string]: unknown;
}

/** The cases of one file whose id starts with `prefix`; throws when there is none, so that no test runs empty. */
export function readReference<Input, Expected>(file: string, prefix = ""): ReferenceCase<Input, Expected>[] {
  const text = readFileSync(path.join(import.meta.dirname, `${file}.json`), "utf8");
  const { cases } = JSON.parse(text) as { cases: ReferenceCase<Input, Expected>[] };
  const found = cases.filter((one) => one.id.startsWith(prefix));
  if (found.length === 0) throw new Error(`${file} holds no case that starts with ${prefix}`);
  return found;
}

/** The annual flow of the Nile at Aswan, 1871 to 1970 (Cobb 1978). */
export function readNile(): readonly number[] {
  return (readReference<{ y: number[] }, unknown>("03c_trend", "nile_mk")[0] as { input: { y: number[] } }).input.y;
}

export function expectNear(actual: number, expected: number, tolerance: Tolerance, what = ""): void {
  const forZero = expected === 0 ? (tolerance.zero_abs ?? 0) : 0;
  const room = Math.max(tolerance.abs ?? 0, (tolerance.rel ?? 0) * Math.abs(expected), forZero);
  const off = Math.abs(actual - expected);
  expect(off <= room, `${what}: got ${actual}, expected ${expected} within ${room}, off by ${off}`).toBe(true);
}

export function expectAllNear(
  actual: readonly number[],
  expected: readonly number[],
  tolerance: Tolerance,
  what = "",
): void {
  expect(actual.length, `${what}: length`).toBe(expected.length);
  expected.forEach((value, index) => {
    expectNear(actual[index] as number, value, tolerance, `${what}[${index}]`);
  });
}

/** The alternating series that NIST prints as first, then two values in turn. */
export function alternating(first: number, turn: readonly [number, number], count: number): number[] {
  return Array.from({ length: count }, (_, i) => (i === 0 ? first : (turn[(i - 1) % 2] as number)));
}

export function answerOf<T>(outcome: { readonly kind: "ok"; readonly value: T } | { readonly kind: "too-few" }): T {
  if (outcome.kind !== "ok") throw new Error(`expected an answer, got ${JSON.stringify(outcome)}`);
  return outcome.value;
}
