import type { Student } from "@/lib/domain/student";
import { LOAD_THRESHOLDS } from "@/lib/verdict/load-thresholds";
import type { Words } from "@/lib/words/catalogue";

/** Cautions that belong under a student's pages: pain first, then a young body's load. They defer to licensed practice and local rules. */
export function cautionsFor(words: Words, student: Student, today: string): readonly string[] {
  const age = student.birthYear === null ? null : Number(today.slice(0, 4)) - student.birthYear;
  const isYoung = age !== null && age <= LOAD_THRESHOLDS.juniorAge.value;
  return [words.say("caution.pain"), ...(isYoung ? [words.say("caution.junior-load")] : [])];
}
