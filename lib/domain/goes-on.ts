import type { EventKind, StudentEvent } from "./student";

/** Kinds of an event that last; every other one is a day. */
const LASTING: readonly EventKind[] = ["break", "injury", "pause"];

/** Whether an event still goes on as far as anybody has said: a break or a pause of which no last day is known. */
export function goesOn({ kind, endDay }: Pick<StudentEvent, "kind" | "endDay">): boolean {
  return LASTING.includes(kind) && (endDay ?? null) === null;
}
