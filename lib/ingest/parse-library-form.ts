import { MOST_MINUTES } from "@/lib/domain/drill-record";
import { changedParts, type DrillDescription } from "@/lib/domain/drill-version";
import type { FormOutcome } from "./field-issue";
import { type Collect, choice, collectIssues, count, freeText, neededText } from "./form-fields";
import { DAYS_A_WEEK, LONGEST_WAIT, MOST_REPS } from "./parse-drill-form";
import { nameKey } from "./text-key";

/** What a form about a drill of the library is read against. */
export interface LibraryFormContext {
  readonly today: string;
  /** Every other drill of the library, those that are not offered any more too. */
  readonly others: readonly { readonly name: string; readonly retiredOn: string | null }[];
  readonly fundamentals: readonly string[];
  /** The drill as it is described now, and whether it was ever given; null: it is new. */
  readonly now: (DrillDescription & { readonly given: "yes" | "no" }) | null;
}

/** A drill as it is to be described from now on, and why; of a new one nobody asks why. */
export interface EnteredDescription {
  readonly becomes: DrillDescription;
  readonly why: string;
}

function readName(data: FormData, { others }: LibraryFormContext, add: Collect): string {
  const name = neededText(data, "name", 80, add);
  const twin = name === "" ? undefined : others.find((other) => nameKey(other.name) === nameKey(name));
  if (twin) add("name", twin.retiredOn === null ? "library-name-taken" : "library-name-retired");
  return name;
}

/** A form that adds a drill to the library, or describes one anew. The same again is refused: there is nothing to keep. */
export function parseLibraryForm(data: FormData, context: LibraryFormContext): FormOutcome<EnteredDescription> {
  const { issues, add } = collectIssues();
  const { now, fundamentals, today } = context;
  const name = readName(data, context, add);
  const fundamentalId =
    now?.given === "yes"
      ? now.fundamentalId
      : choice(data, "fundamental", fundamentals, now?.fundamentalId ?? fundamentals[0] ?? "", add);
  const offered = now === null ? "yes" : choice(data, "offered", ["yes", "no"], "yes", add);
  const becomes: DrillDescription = {
    name,
    fundamentalId,
    how: neededText(data, "how", 1000, add),
    cautions: freeText(data, "cautions", 500, add) ?? "",
    dose: freeText(data, "dose", 200, add) ?? "",
    reps: count(data, "reps", MOST_REPS, add),
    minutesADay: count(data, "minutes", MOST_MINUTES, add),
    daysAWeek: count(data, "daysAWeek", DAYS_A_WEEK, add),
    remeasureDays: count(data, "remeasureDays", LONGEST_WAIT, add),
    retiredOn: offered === "yes" ? null : (now?.retiredOn ?? today),
  };
  const why = now === null ? "" : neededText(data, "why", 300, add);
  if (becomes.remeasureDays === 0) add("remeasureDays", "remeasure-early");
  if (now !== null && issues.length === 0 && changedParts(now, becomes).length === 0) add("why", "library-same");
  return issues.length > 0 ? { kind: "issues", issues } : { kind: "ok", value: { becomes, why } };
}
