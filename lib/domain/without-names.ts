import { isNamedIn, type Naming } from "./named-in";

function isPlain(value: unknown): boolean {
  return value === null || typeof value !== "object";
}

function names(value: unknown, naming: Naming): boolean {
  if (typeof value === "string") return isNamedIn(value, naming);
  if (Array.isArray(value)) return value.some((each) => names(each, naming));
  if (isPlain(value)) return false;
  return Object.entries(value as object).some(([key, each]) => isNamedIn(key, naming) || names(each, naming));
}

/** Whether there is a list of further things in it, of which some may stay. */
function holdsLists(value: unknown): boolean {
  if (Array.isArray(value)) return value.some((each) => !isPlain(each));
  return !isPlain(value) && Object.values(value as object).some((each) => Array.isArray(each) && holdsLists(each));
}

/**
 * A kept value without what names somebody: an entry of a list goes whole (a field with what was typed into it, a line of a
 * log), and what stands under a name or text that names them; all else stays as it was.
 *
 * @param value as `JSON.parse` gives it
 * @returns the same value where nothing names them
 */
export function withoutNames(value: unknown, naming: Naming): unknown {
  if (!names(value, naming)) return value;
  if (typeof value === "string") return "";
  if (Array.isArray(value))
    return value.flatMap((each) => {
      if (!names(each, naming)) return [each];
      return holdsLists(each) ? [withoutNames(each, naming)] : [];
    });
  const kept = Object.entries(value as object).flatMap(([key, each]) => {
    if (isNamedIn(key, naming) || (typeof each === "string" && isNamedIn(each, naming))) return [];
    return [[key, withoutNames(each, naming)]];
  });
  return Object.fromEntries(kept);
}

/** The same for a text that is JSON; another text that names them is left empty. */
export function scrubbedText(text: string, naming: Naming): string {
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch {
    return isNamedIn(text, naming) ? "" : text;
  }
  const kept = withoutNames(value, naming);
  return kept === value ? text : JSON.stringify(kept);
}
