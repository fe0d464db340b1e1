import type { Words } from "@/lib/words/catalogue";
import { sayDay } from "@/lib/words/day-words";
import { beginning, FILMS_BEFORE } from "./beginning";
import type { BriefFinding } from "./brief-finding";
import type { BriefSource } from "./brief-source";

/**
 * Students who stand at the beginning: fewer than two days of films, which come before the first drill; with one film first, for one
 * is missing there.
 */
export function findBegin(words: Words, source: BriefSource): readonly BriefFinding[] {
  return beginning(source)
    .map((entry) => ({ entry, films: entry.filmDays.length, day: entry.filmDays[0] ?? entry.since }))
    .toSorted((a, b) => b.films - a.films)
    .map(({ entry: { student, sessions }, films, day }): BriefFinding => {
      const args = () => ({
        alias: student.alias,
        films,
        missing: FILMS_BEFORE - films,
        day: sayDay(words, day, "short"),
      });
      return {
        word: "begin",
        studentId: student.id,
        alias: student.alias,
        key: `begin ${student.id} ${sessions}`,
        fundamental: null,
        say: () => words.say("brief.begin.item", args()),
        next: () => ({
          heading: words.say("brief.next.begin", args()),
          text: words.say("brief.next.begin.text", args()),
          alters: words.say("brief.next.begin.alters"),
        }),
      };
    });
}
