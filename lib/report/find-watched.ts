import type { Words } from "@/lib/words/catalogue";
import { sayFundamental } from "@/lib/words/say-fundamental";
import { sayWatch } from "@/lib/words/say-watch";
import { isAway } from "./away-days";
import type { BriefFinding } from "./brief-finding";
import type { BriefSource } from "./brief-source";
import { trackHref } from "./roster-rows";
import type { WatchedTrack } from "./roster-source";
import { saidVerdict } from "./said";
import { stopped } from "./stopped";

function isCurrent({ summary }: WatchedTrack, today: string): boolean {
  const last = summary.sessions.findLast((session) => session.mark === "used")?.date;
  return saidVerdict(summary.verdict) !== "slip" && !isAway(last, today);
}

/**
 * Owned fundamentals to look at again, the latest alarm first. What was filmed last six weeks ago isn't among them: its
 * student is away; nor is a proved slip, which is said as one, nor anything of whose work is stopped.
 */
export function findWatched(words: Words, source: BriefSource): readonly BriefFinding[] {
  const held = stopped(source);
  return source.watched
    .filter((track) => isCurrent(track, source.today) && !held.has(track.student.id))
    .flatMap(({ student, fundamental, summary }) => {
      const { watch } = summary.verdict;
      return watch === null ? [] : [{ student, fundamental, summary, watch, href: trackHref(summary) }];
    })
    .toSorted((a, b) => b.watch.raisedOn.localeCompare(a.watch.raisedOn) || a.href.localeCompare(b.href))
    .map(({ student, fundamental, summary, watch, href }): BriefFinding => {
      const said = () => sayWatch(words, watch, fundamental.unit, null);
      const args = { alias: student.alias, name: sayFundamental(words, fundamental) };
      return {
        word: "watch",
        studentId: student.id,
        alias: student.alias,
        key: `watch ${summary.verdict.id} ${watch.raisedOn}`,
        fundamental: { href, label: args.name },
        say: () => said().listed,
        next: () => ({
          heading: words.say("brief.next.watch", args),
          text: words.say("brief.next.watch.text", { ...args, sign: said().listed }),
          alters: words.say("brief.next.watch.alters", args),
        }),
      };
    });
}
