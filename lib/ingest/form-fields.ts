import { type FieldIssue, fieldText } from "./field-issue";
import { hasRefusedMarks } from "./text-key";

/** Adds what is wrong with a field to a form's issues; null, so that a reader can return it. */
export type Collect = (field: string, code: string, args?: FieldIssue["args"]) => null;

/** A list of issues, and what adds to it. */
export function collectIssues(): { readonly issues: readonly FieldIssue[]; readonly add: Collect } {
  const issues: FieldIssue[] = [];
  return {
    issues,
    add: (field, code, args = {}) => {
      issues.push({ field, code, args });
      return null;
    },
  };
}

/** Which of a few words a field holds; an absent field holds the standing one. */
export function choice<T extends string>(
  data: FormData,
  name: string,
  words: readonly T[],
  standing: T,
  add: Collect,
): T {
  const text = fieldText(data, name) || standing;
  const found = words.find((word) => word === text);
  if (found === undefined) add(name, "not-a-choice");
  return found ?? standing;
}

/** Every box of a name that is ticked, among those offered; another one is refused. */
export function ticked<T extends string>(
  data: FormData,
  name: string,
  offered: readonly T[],
  add: Collect,
): readonly T[] {
  const texts = data.getAll(name).map(String);
  if (texts.some((text) => !(offered as readonly string[]).includes(text))) add(name, "not-a-choice");
  return offered.filter((word) => texts.includes(word));
}

/** A free text; too long, or with marks that can't be seen, it is refused and never cut. */
export function freeText(data: FormData, name: string, limit: number, add: Collect): string | null {
  const text = fieldText(data, name);
  if (text.length > limit) return add(name, "too-long", { limit });
  if (hasRefusedMarks(text)) return add(name, "hidden-mark");
  return text || null;
}

/** A free text that must be given. */
export function neededText(data: FormData, name: string, limit: number, add: Collect): string {
  if (fieldText(data, name) === "") add(name, "missing");
  return freeText(data, name, limit, add) ?? "";
}

/** A whole number from 0 up to a limit; an empty field is null. */
export function count(data: FormData, name: string, most: number, add: Collect): number | null {
  const text = fieldText(data, name);
  if (text === "") return null;
  return /^\d{1,4}$/.test(text) && Number(text) <= most
    ? Number(text)
    : add(name, "not-a-count", { low: 0, high: most });
}
