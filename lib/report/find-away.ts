import { daysBetween } from "@/lib/domain/calendar-day";
import type { Words } from "@/lib/words/catalogue";
import { sayDay } from "@/lib/words/day-words";
import { AWAY_DAYS } from "./away-days";
import type { BriefFinding } from "./brief-finding";
import type { BriefSource } from "./brief-source";
import { pausing } from "./pausing";
import { stopped } from "./stopped";

/** Days of a week. */
const WEEK = 7;

/**
 * Students who weren't filmed for so many weeks, whoever was seen last first; whoever is on a break or a pause comes after
 * them, with its days. A student of whom there is no film at all counts from the day on which the record was begun.
 * Whose work is stopped is never the next thing: what is asked for there is a film.
 */
export function findAway(words: Words, source: BriefSource): readonly BriefFinding[] {
  const pauses = pausing(source);
  const held = stopped(source);
  const away = source.students.flatMap((entry) => {
    const last = entry.lastDay ?? entry.since;
    const days = daysBetween(last, source.today);
    return days > source.weeks * WEEK ? [{ entry, last, days, pause: pauses.get(entry.student.id) }] : [];
  });
  return away
    .toSorted((a, b) => (a.pause ? 1 : 0) - (b.pause ? 1 : 0) || a.days - b.days)
    .map(({ entry: { student, lastDay }, last, days, pause }): BriefFinding => {
      const args = () => ({
        alias: student.alias,
        day: sayDay(words, last, "short"),
        weeks: Math.floor(days / WEEK),
        filmed: lastDay === null ? "no" : "yes",
        pause: pause === undefined ? "" : sayDay(words, pause.day, "short"),
        until: pause?.endDay ? sayDay(words, pause.endDay, "short") : "",
        on: pause === undefined ? "none" : pause.endDay === null ? "open" : "dated",
      });
      return {
        word: "away",
        studentId: student.id,
        alias: student.alias,
        // It comes back after as long again.
        key: `away ${student.id} ${last} ${Math.floor(days / AWAY_DAYS)}`,
        fundamental: null,
        say: () => words.say("brief.away.item", args()),
        next:
          pause || held.has(student.id)
            ? null
            : () => ({
                heading: words.say("brief.next.away", args()),
                text: words.say("brief.next.away.text", args()),
                alters: words.say("brief.next.away.alters"),
              }),
      };
    });
}
