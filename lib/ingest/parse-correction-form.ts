import type { Fundamental } from "@/lib/domain/fundamental";
import type { EnteredReading, EnteredSwing } from "@/lib/domain/session-entry";
import { type FormOutcome, fieldText } from "./field-issue";
import { type Collect, collectIssues, neededText } from "./form-fields";
import { readCell } from "./parse-session-form";
import { parseValue } from "./parse-value";

/** One reading to be changed or taken out, and the number of the correction that was in sight. */
export interface WishedChange {
  /** Name of the cell. */
  readonly cell: string;
  readonly readingId: number;
  /** 0: the reading as first entered. */
  readonly seen: number;
  readonly kind: "change" | "void";
  readonly value: number | null;
  readonly typed: string;
}

/** What a correction form asks for. */
export interface WishedCorrection {
  readonly changes: readonly WishedChange[];
  /** Readings where none was; swings that weren't there among them. */
  readonly added: readonly EnteredSwing[];
  readonly why: string;
}

/** The name of a cell, and the unseen fields beside it. */
export const CELL = /^r\.(\d{1,2})\.(.+)$/;

/** Whether two texts say the same value, however they are written. */
function saysSame(one: string, other: string): boolean {
  if (one === other) return true;
  const [a, b] = [parseValue(one), parseValue(other)];
  if (a.kind === "number" && b.kind === "number") return a.value === b.value && a.unit === null;
  return a.kind === "not-measurable" && b.kind === "not-measurable";
}

/** A reading on file and what was in sight of it, as `reading:correction`; null: no reading was there. */
function readSeen(data: FormData, place: string): { readonly readingId: number; readonly seen: number } | null {
  const match = /^(\d{1,15}):(\d{1,15})$/.exec(fieldText(data, `seen.${place}`));
  return match ? { readingId: Number(match[1]), seen: Number(match[2]) } : null;
}

interface Found {
  readonly changes: WishedChange[];
  readonly swings: Map<number, EnteredReading[]>;
  /** Names of cells that say something else than what is on file, rightly or not. */
  readonly touched: string[];
}

function readPlace(data: FormData, fundamental: Fundamental, number: number, found: Found, add: Collect): void {
  const place = `${number}.${fundamental.id}`;
  const cell = `r.${place}`;
  const typed = fieldText(data, cell);
  const shown = readSeen(data, place);
  if (saysSame(typed, fieldText(data, `was.${place}`))) return;
  if (shown) found.touched.push(cell);
  if (shown && typed === "") {
    if (fieldText(data, "confirmVoid") !== "yes") add(cell, "emptied");
    else found.changes.push({ cell, ...shown, kind: "void", value: null, typed });
    return;
  }
  const reading = readCell(data, cell, fundamental, add);
  if (!reading) return;
  if (shown) found.changes.push({ cell, ...shown, kind: "change", value: reading.value, typed });
  else found.swings.set(number, [...(found.swings.get(number) ?? []), reading]);
}

/**
 * The form that corrects one session's readings: cells named `r.<swing>.<fundamental>`, beside each `was.…` with what stood in it
 * and `seen.…` with the reading and its latest correction in sight.
 *
 * Only cells that say something else than before count. An emptied cell takes its reading out and is asked back once; so is a
 * value beyond what is plausible for anyone. A reason is needed as soon as something on file changes.
 */
export function parseCorrectionForm(
  data: FormData,
  fundamentals: readonly Fundamental[],
): FormOutcome<WishedCorrection> {
  const { issues, add } = collectIssues();
  const found: Found = { changes: [], swings: new Map(), touched: [] };
  for (const name of new Set(data.keys())) {
    const match = CELL.exec(name);
    const fundamental = fundamentals.find((each) => each.id === match?.[2] && each.derivedFrom === null);
    const number = Number(match?.[1]);
    if (match && fundamental && number >= 1) readPlace(data, fundamental, number, found, add);
  }
  const { changes } = found;
  const added = [...found.swings]
    .sort(([a], [b]) => a - b)
    .map(([number, readings]): EnteredSwing => ({ number, note: null, readings }));
  const why = found.touched.length > 0 ? neededText(data, "why", 300, add) : fieldText(data, "why");
  if (changes.length === 0 && added.length === 0 && issues.length === 0) add("why", "nothing-changed");
  return issues.length > 0 ? { kind: "issues", issues } : { kind: "ok", value: { changes, added, why } };
}
