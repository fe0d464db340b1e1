import type { Fundamental, FundamentalId, Unit } from "@/lib/domain/fundamental";
import { REREAD_LEVELS, type RereadLevel } from "@/lib/domain/reread";
import { type FieldIssue, type FormOutcome, fieldText } from "./field-issue";
import { type Collect, choice, collectIssues, count, neededText } from "./form-fields";
import { isOwnUnit } from "./parse-unit";
import { parseValue } from "./parse-value";
import { argumentWord } from "./text-key";

/** The word for "those with the fewest" in place of a fundamental. */
export const FEWEST = "fewest";

/** What is asked of a draw. */
export interface RereadWish {
  /** Null: those with the fewest pairs. */
  readonly fundamentalId: FundamentalId | null;
  readonly level: RereadLevel;
  readonly reader: string;
  readonly count: number;
}

/** The most readings that one draw may hold. */
export const MOST_DRAWN = 60;

/** A form that asks for a draw. */
export function parseRereadWish(
  data: FormData,
  context: {
    readonly fundamentals: readonly Fundamental[];
    readonly readers: readonly string[];
    readonly usual: number;
  },
): FormOutcome<RereadWish> {
  const { issues, add } = collectIssues();
  const ids = context.fundamentals.filter((each) => each.derivedFrom === null).map((each) => each.id);
  const fundamental = choice(data, "fundamental", [FEWEST, ...ids], FEWEST, add);
  const level = choice(data, "level", REREAD_LEVELS, "b", add);
  const reader = choice(data, "reader", context.readers, context.readers[0] ?? "", add);
  const wished = count(data, "count", MOST_DRAWN, add);
  if (wished === 0) add("count", "not-a-count", { low: 1, high: MOST_DRAWN });
  if (issues.length > 0) return { kind: "issues", issues };
  const fundamentalId = fundamental === FEWEST ? null : (fundamental as FundamentalId);
  return { kind: "ok", value: { fundamentalId, level, reader, count: wished ?? context.usual } };
}

/** The name of a second reader. */
export function parseSecondReader(data: FormData): FormOutcome<string> {
  const { issues, add } = collectIssues();
  const name = neededText(data, "reader", 80, add);
  return issues.length > 0 ? { kind: "issues", issues } : { kind: "ok", value: name };
}

/** One value as it was typed. */
export interface TypedReread {
  readonly place: number;
  /** Null: not measurable this time. */
  readonly value: number | null;
  readonly typed: string;
  readonly unit: Unit;
}

/** A draw's form read: every good value, whatever else is wrong, and whether the draw is to end. */
export interface RereadForm {
  readonly values: readonly TypedReread[];
  readonly issues: readonly FieldIssue[];
  readonly finish: "yes" | "no";
}

function readOne(data: FormData, place: number, fundamental: Fundamental, add: Collect): TypedReread | null {
  const name = `v.${place}`;
  const typed = fieldText(data, name);
  const parsed = parseValue(typed);
  const read = (value: number | null): TypedReread => ({ place, value, typed, unit: fundamental.unit });
  switch (parsed.kind) {
    case "blank":
      return null;
    case "not-measurable":
      return read(null);
    case "number": {
      if (parsed.unit !== null && !isOwnUnit(parsed.unit, fundamental.unit))
        return add(name, "other-unit", { value: typed, own: argumentWord(fundamental.unit) });
      const { low, high } = fundamental.plausible;
      const unusual = parsed.value < low || parsed.value > high;
      // Held against what is plausible in anyone: the earlier value is nowhere near this form.
      if (unusual && fieldText(data, "confirmUnusual") !== "yes") return add(name, "unusual", { value: typed });
      return read(parsed.value);
    }
    case "either":
      return add(name, "two-readings", { value: typed });
    default:
      return add(name, "not-a-number", { value: typed });
  }
}

/**
 * The form of an open draw: fields `v.<place>`, some of them still empty. A good value is never lost for a bad one.
 *
 * @param items what the draw asks for; other fields are passed over
 */
export function parseRereadForm(
  data: FormData,
  items: readonly { readonly place: number; readonly fundamental: Fundamental }[],
): RereadForm {
  const { issues, add } = collectIssues();
  const values = items.flatMap(({ place, fundamental }) => readOne(data, place, fundamental, add) ?? []);
  return { values, issues, finish: fieldText(data, "finish") === "yes" ? "yes" : "no" };
}
