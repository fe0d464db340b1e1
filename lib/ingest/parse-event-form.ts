import { isCalendarDay } from "@/lib/domain/calendar-day";
import { type EventKind, PAIN_PLACES, type PainPlace } from "@/lib/domain/student";
import { type FormOutcome, fieldText } from "./field-issue";
import { type Collect, choice, collectIssues, freeText, neededText } from "./form-fields";
import { parseValue } from "./parse-value";

/** What is asked of an event of each kind, beside its day; everything else is refused. */
export const EVENT_FIELDS = {
  "new-club": ["note"],
  growth: ["heightCm", "note"],
  break: ["endDay", "note"],
  injury: ["endDay", "place"],
  pause: ["endDay"],
  "reader-change": ["reader"],
  "season-start": ["note"],
} as const satisfies Readonly<Record<EventKind, readonly string[]>>;

/** In the order in which they are offered. Whoever may not know what hurts records a pause by its days alone. */
const ALL_EVENTS = Object.keys(EVENT_FIELDS) as readonly EventKind[];
export const RECORDED_EVENTS = {
  told: ALL_EVENTS,
  "not-told": ALL_EVENTS.filter((kind) => kind !== "injury"),
} as const;

/** An event as a form gives it. */
export interface EnteredEvent {
  readonly kind: EventKind;
  readonly day: string;
  readonly endDay: string | null;
  readonly place: PainPlace | null;
  /** Of a new reader: the name. */
  readonly note: string;
  /** Height on that day, cm; null: not measured. */
  readonly heightCm: number | null;
}

const SHORTEST_CM = 70;
const TALLEST_CM = 230;
const EXTRA = ["endDay", "place", "note", "heightCm", "reader"] as const;

function readDay(data: FormData, name: "day" | "endDay", today: string, add: Collect): string | null {
  const day = fieldText(data, name);
  if (!isCalendarDay(day)) return add(name, "not-a-date");
  return name === "day" && day > today ? add(name, "future-date", { today }) : day;
}

function readEnd(data: FormData, day: string | null, today: string, add: Collect): string | null {
  if (fieldText(data, "endDay") === "") return null;
  const end = readDay(data, "endDay", today, add);
  return end !== null && day !== null && end < day ? add("endDay", "ends-before") : end;
}

function readHeight(data: FormData, add: Collect): number | null {
  const height = parseValue(fieldText(data, "heightCm"));
  if (height.kind === "blank") return null;
  const cm = height.kind === "number" ? height.value : null;
  return cm === null || cm < SHORTEST_CM || cm > TALLEST_CM
    ? add("heightCm", "not-a-height", { low: SHORTEST_CM, high: TALLEST_CM })
    : cm;
}

/** A place of the list; anything else that was typed there is refused and kept nowhere. */
function readPlace(data: FormData, add: Collect): PainPlace | null {
  if (fieldText(data, "place") === "") return add("place", "missing");
  return choice(data, "place", PAIN_PLACES, "elsewhere", add);
}

/**
 * A form that records what happened to a student. An injury has a day, a place of a short list and an end, and no free
 * words: those are refused, not dropped. What begins anew is said afterwards, on the event's own page.
 *
 * @param context.today the day where the student is; a later first day is refused, a later last day may be planned
 * @param context.pain whether whoever sends it may know what hurts; else an injury is refused
 */
export function parseEventForm(
  data: FormData,
  context: { readonly today: string; readonly pain: keyof typeof RECORDED_EVENTS },
): FormOutcome<EnteredEvent> {
  const { issues, add } = collectIssues();
  const kind = choice(data, "kind", RECORDED_EVENTS[context.pain], "new-club", add);
  const asked: readonly string[] = EVENT_FIELDS[kind];
  for (const name of EXTRA)
    if (!asked.includes(name) && fieldText(data, name) !== "")
      add(name, name === "note" && ["injury", "pause"].includes(kind) ? "no-words-of-pain" : "not-asked");
  const day = readDay(data, "day", context.today, add);
  const endDay = asked.includes("endDay") ? readEnd(data, day, context.today, add) : null;
  const place = asked.includes("place") ? readPlace(data, add) : null;
  const heightCm = asked.includes("heightCm") ? readHeight(data, add) : null;
  const words = asked.includes("note") ? freeText(data, "note", 300, add) : null;
  const note = asked.includes("reader") ? neededText(data, "reader", 80, add) : (words ?? "");
  if (issues.length > 0 || day === null) return { kind: "issues", issues };
  return { kind: "ok", value: { kind, day, endDay, place, note, heightCm } };
}

/** Which tracks are to begin anew, and why. */
export function parseRebaselineForm(
  data: FormData,
  offered: readonly string[],
): FormOutcome<{ readonly after: readonly string[]; readonly why: string }> {
  const { issues, add } = collectIssues();
  const texts = data.getAll("rebaselines").map(String);
  if (texts.some((text) => !offered.includes(text))) add("rebaselines", "not-a-choice");
  const why = neededText(data, "why", 300, add);
  if (issues.length > 0) return { kind: "issues", issues };
  return { kind: "ok", value: { after: offered.filter((id) => texts.includes(id)), why } };
}
