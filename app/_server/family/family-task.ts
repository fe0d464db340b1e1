import { type FiledAssignment, readAssignments, readDrills } from "@/db/read/drills";
import { readStudentDraws } from "@/db/read/fair-tests";
import { dayFromNumber, dayNumber } from "@/lib/domain/calendar-day";
import { sayDay } from "@/lib/words/day-words";
import { minutesInDose } from "@/lib/words/minutes-in-dose";
import { sayDose } from "@/lib/words/say-dose";
import { restDaysOf } from "../drill/rest-days";
import type { StudentViewer } from "../gate";

/** The drill in hand of a student. */
export interface FamilyTask {
  readonly assignmentId: string;
  readonly drill: string;
  readonly how: string;
  readonly dose: string;
  readonly cautions: string;
  /** That it rests before the video that measures it; empty: nothing is asked. */
  readonly rest: string;
  /** That the lot chose it, and that a family may say no; empty: a coach chose it. */
  readonly lot: string;
  /** Of the dose; null: it names none. */
  readonly minutes: number | null;
  readonly daysAWeek: number | null;
}

/** The days without practice before the day on which it is measured again, while that lies ahead. */
function sayRest(family: StudentViewer, { start, remeasureOn }: FiledAssignment, day: string): string {
  if (remeasureOn === null || remeasureOn <= day) return "";
  const from = dayFromNumber(dayNumber(remeasureOn) - restDaysOf(family));
  if (from <= start) return "";
  const { words } = family;
  return words.say("family.task.rest", {
    from: sayDay(words, from, "with-weekday"),
    day: sayDay(words, remeasureOn, "with-weekday"),
  });
}

function isDrawn({ db, student }: StudentViewer, { drillId, start }: FiledAssignment): boolean {
  return readStudentDraws(db, student).some((draw) => draw.drillId === drillId && draw.day <= start);
}

/** The drill that was given last of those that run on a day; null: none runs. One task at a time is told. */
export function familyTask(family: StudentViewer, day: string): FamilyTask | null {
  const { db, scope, student, words } = family;
  const given = readAssignments(db, student)
    .filter(({ start, end }) => start <= day && (end ?? day) >= day)
    .at(-1);
  if (!given) return null;
  const drill = readDrills(db, scope).find(({ id }) => id === given.drillId);
  return {
    assignmentId: given.id,
    ...{ drill: given.drill, how: drill?.how ?? "", dose: sayDose(words, given), cautions: drill?.cautions ?? "" },
    rest: sayRest(family, given, day),
    lot: isDrawn(family, given) ? words.say("family.task.lot") : "",
    minutes: minutesInDose(words, given).minutes,
    daysAWeek: given.daysAWeek ?? null,
  };
}
