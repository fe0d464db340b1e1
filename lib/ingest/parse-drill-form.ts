import { dayNumber, isCalendarDay } from "@/lib/domain/calendar-day";
import { DRILL_DECISIONS, type DrillDecision } from "@/lib/domain/drill-decision";
import { MOST_MINUTES } from "@/lib/domain/drill-record";
import { type FormOutcome, fieldText } from "./field-issue";
import { type Collect, choice, collectIssues, count, freeText, neededText } from "./form-fields";
import { nameKey } from "./text-key";

/** The word for a drill that isn't in the library yet. */
export const NEW_DRILL = "new";

/** How much and how often, as far as it was said. */
export interface DrillDose {
  readonly reps: number | null;
  readonly minutes: number | null;
  readonly daysAWeek: number | null;
  readonly words: string;
  /** When to stop; empty: not said. */
  readonly stop: string;
}

/** A drill given to a student as a form says it: one of the library, or a new one. */
export interface EnteredDrill {
  readonly drill:
    | { readonly kind: "known"; readonly id: string }
    | {
        readonly kind: "new";
        readonly name: string;
        readonly fundamentalId: string;
        readonly how: string;
        readonly cautions: string;
      };
  readonly start: string;
  /** After the first day; null: not said. */
  readonly remeasureOn: string | null;
  readonly dose: DrillDose;
}

/** Repeats a day: more is no drill any more (typical are 20 to 40; common practice, no source). */
export const MOST_REPS = 1000;
/** Days of practice in a week. */
export const DAYS_A_WEEK = 7;
/** Days from a drill's first to its next measure: longer is a season, and nobody would be reminded (own choice). */
export const LONGEST_WAIT = 366;

function readDay(data: FormData, name: string, today: string, add: Collect): string {
  const day = fieldText(data, name);
  if (!isCalendarDay(day)) add(name, "not-a-date");
  else if (day > today) add(name, "future-date", { today });
  return day;
}

/** A day that lies after another one and within a year of it; an empty field is null. */
function readNext(data: FormData, name: string, after: string, add: Collect): string | null {
  const day = fieldText(data, name);
  if (day === "") return null;
  if (!isCalendarDay(day)) return add(name, "not-a-date");
  if (!isCalendarDay(after)) return day;
  if (day <= after) return add(name, "remeasure-early");
  return dayNumber(day) - dayNumber(after) > LONGEST_WAIT ? add(name, "remeasure-late", { days: LONGEST_WAIT }) : day;
}

/** A drill of the library as a form knows it. */
interface KnownDrill {
  readonly id: string;
  readonly name: string;
  /** `no`: it was retired, and this student never had it. */
  readonly offered: "yes" | "no";
}

function readDrill(
  data: FormData,
  library: readonly KnownDrill[],
  fundamentals: readonly string[],
  add: Collect,
): EnteredDrill["drill"] {
  const id = choice(data, "drill", [NEW_DRILL, ...library.map((drill) => drill.id)], NEW_DRILL, add);
  if (library.some((drill) => drill.id === id && drill.offered === "no")) add("drill", "drill-retired");
  if (id !== NEW_DRILL) return { kind: "known", id };
  const name = neededText(data, "name", 80, add);
  if (name !== "" && library.some((drill) => nameKey(drill.name) === nameKey(name))) add("name", "drill-name-taken");
  return {
    ...{ kind: "new", name },
    fundamentalId: choice(data, "fundamental", fundamentals, fundamentals[0] ?? "", add),
    how: neededText(data, "how", 1000, add),
    cautions: freeText(data, "cautions", 500, add) ?? "",
  };
}

/**
 * A form that gives a drill.
 *
 * @param context.today the day where the student is; a later start is refused
 */
export function parseDrillForm(
  data: FormData,
  context: {
    readonly today: string;
    readonly library: readonly KnownDrill[];
    readonly fundamentals: readonly string[];
  },
): FormOutcome<EnteredDrill> {
  const { issues, add } = collectIssues();
  const drill = readDrill(data, context.library, context.fundamentals, add);
  const start = readDay(data, "start", context.today, add);
  const remeasureOn = readNext(data, "remeasureOn", start, add);
  const dose = {
    reps: count(data, "reps", MOST_REPS, add),
    minutes: count(data, "minutes", MOST_MINUTES, add),
    daysAWeek: count(data, "daysAWeek", DAYS_A_WEEK, add),
    words: freeText(data, "words", 200, add) ?? "",
    stop: freeText(data, "stop", 200, add) ?? "",
  };
  return issues.length > 0 ? { kind: "issues", issues } : { kind: "ok", value: { drill, start, remeasureOn, dose } };
}

/** A form that stops a drill: its last day, between its first and today, and why. */
export function parseDrillStop(
  data: FormData,
  context: { readonly today: string; readonly start: string },
): FormOutcome<{ readonly end: string; readonly why: string }> {
  const { issues, add } = collectIssues();
  const end = readDay(data, "end", context.today, add);
  if (issues.length === 0 && end < context.start) add("end", "ends-before");
  const why = neededText(data, "why", 300, add);
  return issues.length > 0 ? { kind: "issues", issues } : { kind: "ok", value: { end, why } };
}

/** What was decided about a drill, and the day on which it is measured next; null: it ends. */
export interface EnteredDecision {
  readonly decision: DrillDecision;
  readonly why: string;
  readonly next: string | null;
}

/**
 * A form that says what is done about a drill whose day to be measured again has come. Where it goes on, the next day has to
 * lie after today; where it ends, none is read.
 */
export function parseDrillDecision(data: FormData, context: { readonly today: string }): FormOutcome<EnteredDecision> {
  const { issues, add } = collectIssues();
  if (fieldText(data, "decision") === "") add("decision", "missing");
  const decision = choice(data, "decision", DRILL_DECISIONS, "keep", add);
  const why = neededText(data, "why", 300, add);
  const goesOn = decision === "keep" || decision === "change-goal";
  const next = goesOn ? readNext(data, "next", context.today, add) : null;
  if (goesOn && fieldText(data, "next") === "") add("next", "missing");
  return issues.length > 0 ? { kind: "issues", issues } : { kind: "ok", value: { decision, why, next } };
}
