import { daysBetween } from "@/lib/domain/calendar-day";
import { BRIEF_THRESHOLDS } from "@/lib/verdict/brief-thresholds";
import type { Words } from "@/lib/words/catalogue";
import { sayDay } from "@/lib/words/day-words";
import { sayPlace } from "@/lib/words/say-place";
import type { BriefFinding } from "./brief-finding";
import type { BriefSource } from "./brief-source";

/** Of whom the family lately said that something hurts, the latest first; the source holds only what the viewer may know. */
export function findPain(words: Words, source: BriefSource): readonly BriefFinding[] {
  const students = new Map(source.students.map(({ student }) => [student.id, student]));
  return source.pains
    .filter(({ day }) => daysBetween(day, source.today) <= BRIEF_THRESHOLDS.painDays.value)
    .toSorted((a, b) => b.day.localeCompare(a.day) || a.id.localeCompare(b.id))
    .flatMap((pain): BriefFinding[] => {
      const student = students.get(pain.studentId);
      if (student === undefined) return [];
      const args = {
        alias: student.alias,
        day: sayDay(words, pain.day, "short"),
        place: sayPlace(words, pain.place),
      };
      return [
        {
          word: "pain",
          studentId: student.id,
          alias: student.alias,
          key: `pain ${student.id} ${pain.id}`,
          fundamental: null,
          say: () => words.say("brief.pain.item", args),
          next: () => ({
            heading: words.say("brief.next.pain", args),
            text: words.say("brief.next.pain.text", args),
            alters: words.say("brief.next.pain.alters"),
          }),
        },
      ];
    });
}
