import { isCalendarDay } from "@/lib/domain/calendar-day";
import type { ClubGroup } from "@/lib/domain/club-group";
import { type ClubGrouping, currentGroups, groupOfClub, saidGroup } from "@/lib/domain/club-grouping";
import { readClubWord } from "@/lib/domain/club-word";
import type { Fundamental } from "@/lib/domain/fundamental";
import type { Hand } from "@/lib/domain/handedness";
import { CIRCUMSTANCES } from "@/lib/domain/session";
import type { EnteredReading, EnteredSession, EnteredSwing } from "@/lib/domain/session-entry";
import { type FormOutcome, fieldText } from "./field-issue";
import { type Collect, choice, collectIssues, count, freeText } from "./form-fields";
import { notFilmedField, readCaptures, viewsNotFilmed } from "./parse-capture-form";
import { parseCell } from "./parse-cell";
import { isOwnUnit } from "./parse-unit";
import { argumentWord } from "./text-key";

/** What a session's form is read against. */
export interface SessionFormContext {
  /** The day where the student is; later days are refused. */
  readonly today: string;
  readonly fundamentals: readonly Fundamental[];
  readonly grouping: ClubGrouping;
  readonly birthYear: number | null;
  readonly hand: Hand;
  readonly reader: string;
}

/** The group that was said; a club that belongs to another group is asked back, so that no track mixes two. */
function readClubGroup(data: FormData, club: string | null, grouping: ClubGrouping, add: Collect): ClubGroup | null {
  const chosen = currentGroups(grouping).find((group) => group.id === fieldText(data, "clubGroup"));
  if (!chosen) return add("clubGroup", "not-a-choice");
  const word = club === null ? null : readClubWord(club);
  if (word !== null && word.club !== null && groupOfClub(grouping, word.club) !== chosen.id)
    return add("clubGroup", "club-of-another-group", {
      value: club ?? "",
      group: groupOfClub(grouping, word.club),
    });
  return saidGroup(grouping, chosen.id, club);
}

/** Whether a value lies beyond what is plausible for anyone; nobody's own range is asked. */
export function isUnusual(value: number, { plausible }: Pick<Fundamental, "plausible">): boolean {
  return value < plausible.low || value > plausible.high;
}

/** All unusual values were confirmed at once, or this one by itself, as it stands now. */
function isConfirmed(data: FormData, name: string, typed: string): boolean {
  return fieldText(data, "confirmUnusual") === "yes" || fieldText(data, `ok.${name}`) === typed;
}

/** One cell of the grid; null: nothing was read there, or it can't be taken. */
export function readCell(data: FormData, name: string, fundamental: Fundamental, add: Collect): EnteredReading | null {
  const typed = fieldText(data, name);
  const parsed = parseCell(typed);
  const reading = (value: number | null): EnteredReading => ({
    fundamentalId: fundamental.id,
    value,
    typed,
    unit: fundamental.unit,
    signRule: "neutral",
  });
  switch (parsed.kind) {
    case "blank":
      return null;
    case "not-measurable":
      return reading(null);
    case "number": {
      if (parsed.unit !== null && !isOwnUnit(parsed.unit, fundamental.unit)) {
        return add(name, "other-unit", { value: typed, own: argumentWord(fundamental.unit) });
      }
      // The sentence tells nothing of this student: reading stays blind.
      if (isUnusual(parsed.value, fundamental) && !isConfirmed(data, name, typed))
        return add(name, "unusual", { value: typed });
      return reading(parsed.value);
    }
    case "either":
      return add(name, "two-readings", { value: typed });
    default:
      return add(name, "not-a-number", { value: typed });
  }
}

function readSwings(data: FormData, fundamentals: readonly Fundamental[], add: Collect): EnteredSwing[] {
  const swings = new Map<number, EnteredReading[]>();
  for (const name of data.keys()) {
    const match = /^r\.(\d{1,2})\.(.+)$/.exec(name);
    const fundamental = fundamentals.find((each) => each.id === match?.[2] && each.derivedFrom === null);
    if (!match || !fundamental || Number(match[1]) < 1) continue;
    const reading = readCell(data, name, fundamental, add);
    const number = Number(match[1]);
    if (reading) swings.set(number, [...(swings.get(number) ?? []), reading]);
  }
  return [...swings].sort(([a], [b]) => a - b).map(([number, readings]) => ({ number, note: null, readings }));
}

/** Fields of a view's film that say something only where somebody filled them in. */
const FILM_TEXTS =
  /^(?:placementLabel|placedBy|offBy|film|pointing|across|plumb|beside|distance|lens|hands|frames|shutter)\./;

/** A view that was not filmed has no values and nothing to say of its film: what is filled in is asked back, never dropped. */
function checkNotFilmed(
  data: FormData,
  swings: readonly EnteredSwing[],
  fundamentals: readonly Fundamental[],
  add: Collect,
): void {
  const read = new Set(swings.flatMap((swing) => swing.readings.map((reading) => reading.fundamentalId)));
  for (const view of viewsNotFilmed(data)) {
    const said = [...data.keys()].some(
      (name) => FILM_TEXTS.test(name) && name.endsWith(`.${view}`) && fieldText(data, name) !== "",
    );
    if (said || fundamentals.some((each) => each.view === view && read.has(each.id)))
      add(notFilmedField(view), "not-filmed-but-said");
  }
}

/** What is said of a session beside its readings and films. */
export type SaidOfSession = Pick<
  EnteredSession,
  "day" | "club" | "circumstance" | "aid" | "daysSincePractice" | "note" | "solid" | "balls"
> & {
  /** Null: it can't be taken. */
  readonly clubGroup: ClubGroup | null;
};

/** When and how a session was filmed, from its form; `add` collects what is wrong with each field. */
export function readSessionFacts(
  data: FormData,
  context: Pick<SessionFormContext, "today" | "grouping" | "birthYear">,
  add: Collect,
): SaidOfSession {
  const day = fieldText(data, "day");
  if (!isCalendarDay(day)) add("day", "not-a-date");
  else if (day > context.today) add("day", "future-date", { today: context.today });
  else if (context.birthYear !== null && Number(day.slice(0, 4)) < context.birthYear)
    add("day", "before-birth", { year: context.birthYear });
  const club = freeText(data, "club", 60, add);
  const clubGroup = readClubGroup(data, club, context.grouping, add);
  const circumstance = choice(data, "circumstance", CIRCUMSTANCES, "unaided", add);
  const balls = count(data, "balls", 1000, add);
  const solid = count(data, "solid", 1000, add);
  if (solid !== null && balls === null) add("balls", "balls-needed");
  if (solid !== null && balls !== null && solid > balls) add("solid", "more-solid-than-balls");
  const daysSincePractice = count(data, "daysSincePractice", 1000, add);
  const aid = freeText(data, "aid", 60, add);
  return {
    day,
    clubGroup,
    club,
    circumstance,
    aid: circumstance === "aid-in-view" ? aid : null,
    daysSincePractice,
    note: freeText(data, "note", 2000, add),
    solid: balls === null ? null : solid,
    balls: solid === null ? null : balls,
  };
}

/**
 * A session's form: when and how it was filmed, and a grid of readings named `r.<swing>.<fundamental>`.
 *
 * Values beyond what is plausible for anyone are asked back once and pass with `confirmUnusual`, or one by one with
 * `ok.r.<swing>.<fundamental>` that holds the value as typed.
 */
export function parseSessionForm(data: FormData, context: SessionFormContext): FormOutcome<EnteredSession> {
  const { issues, add } = collectIssues();
  const { clubGroup, ...said } = readSessionFacts(data, context, add);
  const captures = readCaptures(data, context.hand, add);
  const swings = readSwings(data, context.fundamentals, add);
  checkNotFilmed(data, swings, context.fundamentals, add);
  if (swings.length === 0 && !issues.some((issue) => issue.field.startsWith("r."))) add("r.1", "no-readings");
  if (issues.length > 0 || clubGroup === null) return { kind: "issues", issues };
  return {
    kind: "ok",
    value: {
      ...said,
      sequence: null,
      clubGroup,
      reader: context.reader,
      stanceWidthCm: null,
      marks: [],
      setAsideReason: null,
      captures,
      statedCaptureSds: [],
      swings,
    },
  };
}
