import { fieldText } from "./field-issue";
import type { Collect } from "./form-fields";
import { parseValue } from "./parse-value";

/** Least and largest number that a field may hold. */
export type NumberBounds = readonly [low: number, high: number];

/** A plain number within its bounds; an empty field is null. A text that could be two numbers is refused, never guessed. */
export function readNumber(data: FormData, name: string, [low, high]: NumberBounds, add: Collect): number | null {
  const text = fieldText(data, name);
  const parsed = parseValue(text);
  if (parsed.kind === "blank") return null;
  if (parsed.kind !== "number" || parsed.unit !== null)
    return add(name, parsed.kind === "either" ? "goal-two-readings" : "goal-not-a-number", { value: text });
  return parsed.value < low || parsed.value > high ? add(name, "number-out-of-range", { low, high }) : parsed.value;
}

/** The same where a number has to be given; 0 stands for one that is missing, which is an issue. */
export function neededNumber(data: FormData, name: string, bounds: NumberBounds, add: Collect): number {
  if (fieldText(data, name) === "") add(name, "missing");
  return readNumber(data, name, bounds, add) ?? 0;
}
