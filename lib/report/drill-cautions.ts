import type { DrillAssignment, Student } from "@/lib/domain/student";
import { LOAD_THRESHOLDS } from "@/lib/verdict/load-thresholds";
import type { Words } from "@/lib/words/catalogue";
import { minutesInDose } from "@/lib/words/minutes-in-dose";

/** What is asked of a student in a week, over all drills that run. */
interface AskedWeek {
  readonly minutes: number;
  readonly reps: number;
  /** Of the drill with the most. */
  readonly days: number;
}

type Given = Pick<DrillAssignment, "start" | "end" | "dose" | "reps" | "minutesADay" | "daysAWeek"> & {
  readonly state?: "stands" | "taken-back";
};

function askedWeek(words: Words, drills: readonly Given[], today: string): AskedWeek {
  const running = drills.filter(
    ({ start, end, state }) => state !== "taken-back" && start <= today && (end === null || end > today),
  );
  const sum = (a: AskedWeek, given: Given): AskedWeek => {
    const { reps, daysAWeek } = given;
    const days = daysAWeek ?? 0;
    return {
      minutes: a.minutes + (minutesInDose(words, given).minutes ?? 0) * days,
      reps: a.reps + (reps ?? 0) * days,
      days: Math.max(a.days, days),
    };
  };
  return running.reduce(sum, { minutes: 0, reps: 0, days: 0 });
}

/**
 * A quiet word where the drills that run ask more of a young body than is usual: what is asked in a week, the usual, and what
 * weighs more than any drill, the hours of all sport. Counted only where minutes or repeats and days a week were said.
 *
 * @param source.drills of the student, running or not; what was taken back asks for nothing
 * @returns empty for grown-ups, where the year of birth isn't known, and up to the usual
 */
export function drillCautions(
  words: Words,
  source: { readonly student: Student; readonly drills: readonly Given[]; readonly today: string },
): readonly string[] {
  const { student, drills, today } = source;
  const age = student.birthYear === null ? null : Number(today.slice(0, 4)) - student.birthYear;
  const { juniorAge, drillMinutes, drillReps, drillDays } = LOAD_THRESHOLDS;
  if (age === null || age > juniorAge.value) return [];
  const week = askedWeek(words, drills, today);
  const asked = [
    ...(week.minutes > drillMinutes.value ? [words.say("caution.drill-load.minutes", { minutes: week.minutes })] : []),
    ...(week.reps > drillReps.value ? [words.say("caution.drill-load.reps", { reps: week.reps })] : []),
    ...(week.days > drillDays.value ? [words.say("caution.drill-load.days", { days: week.days })] : []),
  ];
  if (asked.length === 0) return [];
  const usual = words.say("caution.drill-load.usual", {
    ...{ minutes: drillMinutes.value, reps: drillReps.value, days: drillDays.value },
  });
  return [words.say("caution.drill-load", { alias: student.alias, age, asked: asked.join(", "), usual })];
}
