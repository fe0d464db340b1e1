import { daysBetween } from "@/lib/domain/calendar-day";
import type { Words } from "@/lib/words/catalogue";
import { sayDay } from "@/lib/words/day-words";
import type { BriefFinding } from "./brief-finding";
import type { BriefSource } from "./brief-source";
import { planHref } from "./plan-href";
import { stopped } from "./stopped";

/**
 * Films that were promised and haven't come, the longest awaited first; by the day that was agreed, not by silence. Nobody
 * whose work is stopped is among them.
 */
export function findDue(words: Words, source: BriefSource): readonly BriefFinding[] {
  const held = stopped(source);
  return source.due
    .filter(({ studentId }) => !held.has(studentId))
    .toSorted((a, b) => a.dueOn.localeCompare(b.dueOn) || a.alias.localeCompare(b.alias))
    .map(({ planId, studentId, clubGroup, alias, dueOn, remindedOn }): BriefFinding => {
      const args = () => ({
        alias,
        day: sayDay(words, dueOn, "short"),
        late: daysBetween(dueOn, source.today),
        told: remindedOn === null ? "no" : "yes",
        reminded: remindedOn === null ? "" : sayDay(words, remindedOn, "short"),
      });
      return {
        word: "due",
        studentId,
        alias,
        // Reminded, it is another matter: whether that brought a film.
        key: `due ${studentId} ${planId} ${remindedOn ?? ""}`,
        fundamental: { href: planHref(studentId, { club: clubGroup }), label: words.say("brief.due.plan") },
        say: () => words.say("brief.due.item", args()),
        next: () => ({
          heading: words.say("brief.next.due", args()),
          text: words.say("brief.next.due.text", args()),
          alters: words.say("brief.next.due.alters"),
        }),
      };
    });
}
