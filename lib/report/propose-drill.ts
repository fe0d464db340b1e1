import { dayFromNumber, dayNumber, isCalendarDay } from "@/lib/domain/calendar-day";
import type { AssignmentRecord, LastGiven } from "@/lib/domain/drill-record";
import { DRILL_THRESHOLDS } from "@/lib/verdict/drill-thresholds";
import type { Words } from "@/lib/words/catalogue";
import { minutesInDose } from "@/lib/words/minutes-in-dose";

/** A drill of the library with how it is usually given. */
export interface LibraryDrill {
  readonly id: string;
  readonly name: string;
  readonly fundamentalId: string;
  readonly dose: string;
  readonly reps: number | null;
  readonly minutesADay: number | null;
  readonly daysAWeek: number | null;
  readonly remeasureDays: number | null;
}

/** What a proposal rests on. */
export interface ProposeSource {
  readonly library: readonly LibraryDrill[];
  /** How each drill was last given to anybody whom the viewer may see, the drill given last first. */
  readonly use: readonly LastGiven[];
  /** The student's own, by first day. */
  readonly own: readonly AssignmentRecord[];
  /** Days before a film that are kept free of practice. */
  readonly rest: number;
  readonly today: string;
}

/** What is asked for: a fundamental, a drill, or one that is given again. */
export interface DrillWish {
  readonly fundamentalId?: string | undefined;
  readonly drillId?: string | undefined;
  /** Given again as it was. */
  readonly again?: AssignmentRecord | null | undefined;
  /** Not this one: it has just been ended for another. */
  readonly not?: string | undefined;
}

/** How a drill is to be given, as far as anything says it. */
export interface ProposedDose {
  readonly reps: number | null;
  readonly minutes: number | null;
  readonly daysAWeek: number | null;
  readonly words: string;
  readonly stop: string;
  readonly remeasureOn: string;
  /** Where it comes from; `none`: only the day to be measured again is proposed. */
  readonly by: "own" | "usual" | "others" | "none";
  /** Of `own`: the day on which it was given so. */
  readonly givenOn: string | null;
}

/** A proposal: which drill, in what order the library stands, and the dose. */
export interface DrillProposal {
  readonly library: readonly LibraryDrill[];
  /** Null: the library has none for the fundamental. */
  readonly drillId: string | null;
  readonly dose: ProposedDose;
}

type Given = Pick<LastGiven, "start" | "dose" | "reps" | "minutesADay" | "daysAWeek" | "stopRule" | "remeasureOn">;

/** Days from the first to the measure; null: none was set, it wasn't after the first, or it has been put off. */
function waitOf({ start, remeasureOn }: Given): number | null {
  const days = remeasureOn === null ? 0 : dayNumber(remeasureOn) - dayNumber(start);
  return days > 0 && days <= DRILL_THRESHOLDS.copiedWait.value ? days : null;
}

type Asked = Pick<LibraryDrill, "dose" | "reps" | "minutesADay" | "daysAWeek">;

function hasDose({ dose, reps, minutesADay, daysAWeek }: Asked): boolean {
  return dose !== "" || reps !== null || minutesADay !== null || daysAWeek !== null;
}

/** The order of the library: for the fundamental first; of those the one that the student had last, then anybody, then by name. */
function ordered({ library, use, own }: ProposeSource, { fundamentalId, not }: DrillWish): LibraryDrill[] {
  const mine = own.filter(({ state }) => state === "stands").map(({ drillId }) => drillId);
  const rank = ({ id }: LibraryDrill): number => {
    const place = use.findIndex(({ drillId }) => drillId === id);
    return (mine.includes(id) ? mine.lastIndexOf(id) + 1 : 0) * -1000 + (place < 0 ? 999 : place);
  };
  const group = ({ id, fundamentalId: of }: LibraryDrill): number => (of !== fundamentalId ? 2 : id === not ? 1 : 0);
  return [...library].sort(
    (a, b) => group(a) - group(b) || rank(a) - rank(b) || (a.name < b.name ? -1 : a.name > b.name ? 1 : 0),
  );
}

/**
 * How a drill was last given to the student; else how it is usually given; else how it was last given to anybody. The day to
 * be measured again follows the same order; where nobody set one, after the days of practice of `DRILL_THRESHOLDS` and those
 * of rest.
 *
 * @param start the first day, from which it is counted; anything that is no day: today
 */
export function proposeDose(
  words: Words,
  source: ProposeSource,
  drill: LibraryDrill | undefined,
  start: string,
  again: AssignmentRecord | null = null,
): ProposedDose {
  const own = again ?? source.own.findLast(({ state, drillId }) => state === "stands" && drillId === drill?.id) ?? null;
  const other = source.use.find(({ drillId }) => drillId === drill?.id) ?? null;
  const usual: Given | null =
    drill && hasDose(drill) ? { ...drill, start: source.today, stopRule: "", remeasureOn: null } : null;
  const found: readonly (readonly ["own" | "usual" | "others", Given | null])[] = [
    ["own", own !== null && (again !== null || hasDose(own)) ? own : null],
    ["usual", usual],
    ["others", other !== null && hasDose(other) ? other : null],
  ];
  const [by, given] = found.find(([, each]) => each !== null) ?? ["none", null];
  const wait =
    (own === null ? null : waitOf(own)) ??
    drill?.remeasureDays ??
    (other === null ? null : waitOf(other)) ??
    DRILL_THRESHOLDS.practiceDays.value + source.rest;
  const first = isCalendarDay(start) ? start : source.today;
  const split = minutesInDose(words, given ?? { dose: "" });
  return {
    reps: given?.reps ?? null,
    minutes: split.minutes,
    daysAWeek: given?.daysAWeek ?? null,
    // What was written for somebody else stays theirs: figures alone are taken over.
    words: by === "others" ? "" : split.words,
    stop: by === "others" ? "" : (given?.stopRule ?? ""),
    remeasureOn: dayFromNumber(dayNumber(first) + wait),
    by: given === null ? "none" : (by as ProposedDose["by"]),
    givenOn: by === "own" ? (given?.start ?? null) : null,
  };
}

/** The drill and the dose with which a form begins: what is given again, the wished one, or the last used for the fundamental. */
export function proposeDrill(words: Words, source: ProposeSource, wish: DrillWish): DrillProposal {
  const { again = null } = wish;
  const fundamentalId = again?.fundamentalId ?? wish.fundamentalId;
  const library = ordered(source, { ...wish, fundamentalId });
  const wished = library.find(({ id }) => id === (again?.drillId ?? wish.drillId));
  const forIt = fundamentalId === undefined ? library : library.filter((each) => each.fundamentalId === fundamentalId);
  const drill = wished ?? forIt[0];
  return { library, drillId: drill?.id ?? null, dose: proposeDose(words, source, drill, source.today, again) };
}
