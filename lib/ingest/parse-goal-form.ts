import { isCalendarDay } from "@/lib/domain/calendar-day";
import type { Edges, Fundamental } from "@/lib/domain/fundamental";
import { type GoalBand, givesBack, goalSeries } from "@/lib/domain/goal-band";
import { type FormOutcome, fieldText } from "./field-issue";
import { type Collect, choice, collectIssues, count, neededText } from "./form-fields";
import { parseValue } from "./parse-value";

/** What a band is set for on one page: one student; or the academy, and those of an age in it. */
export const GOAL_PAGES = ["student", "academy"] as const;

/** A band as a form gives it; without edges it gives the word back to the wider one. */
export type EnteredGoal = Edges &
  Pick<GoalBand, "ageFrom" | "ageTo" | "from" | "reason"> & { readonly scope: "academy" | "age-range" | "student" };

/** What a form is read against. */
export interface GoalContext {
  readonly page: (typeof GOAL_PAGES)[number];
  readonly fundamental: Fundamental;
  /** Null: the page is the academy's. */
  readonly studentId: string | null;
  readonly today: string;
  /** What holds today, with which the form began. */
  readonly now: Edges;
  /** Of the fundamental and club group, in the order of their first days. */
  readonly bands: readonly GoalBand[];
}

/** Years to which a band may be dated back, and for which it may be planned: a slip of the finger lies further away. */
const YEARS_BACK = 10;
const YEARS_AHEAD = 1;
/** What is printed has one digit after the point; a finer edge would not be the one that is read. */
const DIGITS = /^-?\d+(?:\.\d)?$/;
const OLDEST = 99;
const LONGEST = 300;

/** The day so many years away; 29 February becomes 28. */
function yearsFrom(day: string, years: number): string {
  const moved = `${String(Number(day.slice(0, 4)) + years).padStart(4, "0")}${day.slice(4)}`;
  return isCalendarDay(moved) ? moved : moved.replace("-29", "-28");
}

function readEdge(data: FormData, name: "low" | "high", { unit, plausible }: Fundamental, add: Collect): number | null {
  const text = fieldText(data, name);
  const parsed = parseValue(text);
  if (parsed.kind === "blank") return null;
  if (parsed.kind !== "number")
    return add(name, parsed.kind === "either" ? "goal-two-readings" : "goal-not-a-number", { value: text });
  const own = unit === "deg" ? ["deg"] : ["percent", unit];
  if (parsed.unit !== null && !own.includes(parsed.unit)) return add(name, "goal-unit", { value: text });
  const { value } = parsed;
  if (value < plausible.low || value > plausible.high)
    return add(name, "goal-out-of-range", { value: text, least: plausible.low, most: plausible.high });
  return DIGITS.test(String(value)) ? value : add(name, "goal-digits", { value: text });
}

function readAges(data: FormData, add: Collect): { readonly ageFrom: number | null; readonly ageTo: number | null } {
  const [ageFrom, ageTo] = (["ageFrom", "ageTo"] as const).map((name) =>
    fieldText(data, name) === "" ? add(name, "missing") : count(data, name, OLDEST, add),
  ) as [number | null, number | null];
  if (ageFrom !== null && ageTo !== null && ageTo < ageFrom) add("ageTo", "goal-age-order");
  return { ageFrom, ageTo };
}

function readFrom(data: FormData, today: string, begun: GoalBand | null, add: Collect): string {
  const from = fieldText(data, "from");
  if (!isCalendarDay(from)) {
    add("from", "not-a-date");
    return "";
  }
  const [first, last] = [yearsFrom(today, -YEARS_BACK), yearsFrom(today, YEARS_AHEAD)];
  if (from > last) add("from", "too-far-ahead", { latest: last });
  else if (from < first) add("from", "goal-too-old", { earliest: first });
  else if (begun !== null && from < begun.from) add("from", "goal-before-latest", { day: begun.from });
  else if (from < today && fieldText(data, "datedBack") !== "yes") add("datedBack", "goal-dated-back", { today });
  return from;
}

/**
 * A form that sets a goal band: from a day on, for a student, an age range or the academy, or that gives the word back to the
 * wider band. A band may have one edge. It begins no earlier than the one of its own that has begun, whose days stay its
 * own; what is planned for its first day or later it replaces. Before today only where whoever sends it says that they know what that leaves as it was.
 */
export function parseGoalForm(data: FormData, context: GoalContext): FormOutcome<EnteredGoal> {
  const { issues, add } = collectIssues();
  const { page, fundamental, today } = context;
  const scope = page === "student" ? page : choice(data, "reach", ["academy", "age-range"] as const, "academy", add);
  const ages = scope === "age-range" ? readAges(data, add) : { ageFrom: null, ageTo: null };
  if (page === "academy" && scope === "academy")
    for (const name of ["ageFrom", "ageTo"]) if (fieldText(data, name) !== "") add(name, "not-asked");
  const series = goalSeries({ ...ages, scope, studentId: context.studentId } as GoalBand);
  const own = context.bands.filter((band) => goalSeries(band) === series && band.replaced !== true);
  const on = (day: string): GoalBand | null => own.filter(({ from }) => from <= day).at(-1) ?? null;
  const typed = fieldText(data, "from");
  const asked = typed > today ? typed : today;
  const latest = on(asked);
  const what = choice(data, "what", ["band", "back"] as const, "band", add);
  const edge = (name: "low" | "high"): number | null => {
    if (what === "band") return readEdge(data, name, fundamental, add);
    const text = fieldText(data, name);
    // What the form began with was not typed for this.
    return text === "" || Number(text) === context.now[name] ? null : add(name, "goal-back-with-edge");
  };
  const before = issues.length;
  const [low, high] = [edge("low"), edge("high")];
  const readable = issues.length === before;
  const stands = latest !== null && !givesBack(latest);
  // Whatever replaces a planned one alters something, also what holds already or nothing at all.
  const planned = own.some((band) => band.from > asked);
  if (what === "back" && !stands && !planned) add("what", "goal-nothing-back");
  if (what === "band" && readable) {
    if (low === null && high === null) add("low", "goal-no-edge");
    else if (low !== null && high !== null && low >= high) add("high", "goal-order");
    else if (stands && !planned && latest.low === low && latest.high === high) add("low", "goal-same");
  }
  const from = readFrom(data, today, on(today), add);
  const reason = neededText(data, "reason", LONGEST, add);
  if (issues.length > 0) return { kind: "issues", issues };
  return { kind: "ok", value: { low, high, scope, ...ages, from, reason } };
}
