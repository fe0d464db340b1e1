import type { Priority, Work } from "@/lib/verdict/choose-priority";
import { KEEP_THRESHOLDS } from "@/lib/verdict/keep-thresholds";
import { rests } from "@/lib/verdict/rests";
import { workStanding } from "@/lib/verdict/work-standing";
import type { Words } from "@/lib/words/catalogue";
import { sayDay } from "@/lib/words/day-words";
import { sayFundamental } from "@/lib/words/say-fundamental";
import { isAway } from "./away-days";
import type { FundamentalSource } from "./fundamental-source";
import type { WorkTrack } from "./order-of-work";
import type { FundamentalPage } from "./page-model";
import { sayNames, sayStop } from "./say-work";

/** What the next act rests on beside the order of work. */
export type DoNextSource = Pick<FundamentalSource, "student" | "history" | "verdict" | "drills" | "today">;

/** The last day of a film that counts; undefined: none does. */
function lastUsed({ history }: DoNextSource): string | undefined {
  return history.sessions.filter((entry) => entry.apart === null).at(-1)?.session.day;
}

/** It is in hand: filmed where it isn't known, filmed after what comes before it, or worked on with a drill and filmed again. */
function inHandNext(words: Words, source: DoNextSource, { standing, blocks }: Work<WorkTrack>): string {
  const last = lastUsed(source);
  if (last !== undefined && isAway(last, source.today))
    return words.say("do-next.film-first", { day: sayDay(words, last, "short") });
  if (standing === "doubt" || standing === "unmeasured") return words.say("do-next.measure");
  if (blocks.length > 0) return words.say("do-next.after", { names: sayNames(words, blocks) });
  if (standing !== "outside" && standing !== "slipped") return words.say("do-next.chosen");
  const { id } = source.history.fundamental;
  const runs = source.drills.findLast(
    ({ fundamentalId, start, end }) =>
      fundamentalId === id && start <= source.today && (end === null || end >= source.today),
  );
  if (runs === undefined) return words.say("do-next.give");
  const day = runs.remeasureOn ?? null;
  return words.say("do-next.practise", {
    drill: runs.drill,
    day: day === null ? "" : sayDay(words, day, "with-weekday"),
    when: day === null ? "unset" : day > source.today ? "set" : "come",
  });
}

/** It is owned: looked at again where an alarm is raised or no film is recent, read in turn, or at rest. */
function ownedNext(words: Words, source: DoNextSource): string {
  const last = lastUsed(source);
  if (last === undefined || isAway(last, source.today))
    return words.say("keep.check", { day: last === undefined ? "" : sayDay(words, last, "full") });
  if (source.verdict.watch !== null) return words.say("do-next.look-again");
  return rests(source.verdict)
    ? words.say("keep.rests", { every: KEEP_THRESHOLDS.restEvery.value })
    : words.say("keep.keeps");
}

/** The sentence alone. */
function sayDoNext(words: Words, source: DoNextSource, priority: Priority<WorkTrack>): string {
  const { stop, inHand, keeps, unknown } = priority;
  const { id } = source.history.fundamental;
  const isThis = ({ fundamental }: WorkTrack): boolean => fundamental.id === id;
  if (stop !== null) return words.say("do-next.stopped", { stop: sayStop(words, stop) });
  if (inHand !== null && isThis(inHand.item)) return inHandNext(words, source, inHand);
  const name = inHand === null ? "" : sayFundamental(words, inHand.item.fundamental);
  if (inHand?.blocks.some(isThis)) return words.say("do-next.before", { name });
  const standing = workStanding(source);
  if (standing === "owned") return ownedNext(words, source);
  if (keeps.some(isThis)) return words.say("do-next.keep");
  if (unknown.some(isThis)) return words.say("do-next.unknown");
  if (standing === "no-goal") return words.say("do-next.no-goal");
  if (standing === "inside" || inHand === null) return words.say("do-next.nothing");
  return words.say("do-next.waits", { name });
}

/**
 * The next act about one fundamental, in one sentence: film it again and how, work on it, keep it, or nothing. What is in hand,
 * what is filmed before it and what is kept is what the order of work says on the season's page with the same clubs.
 *
 * @param priority of all the student's fundamentals with the clubs of this track
 */
export function buildDoNext(
  words: Words,
  source: DoNextSource,
  priority: Priority<WorkTrack>,
): NonNullable<FundamentalPage["next"]> {
  const { student, history } = source;
  return {
    margin: words.say("season.margin.next"),
    heading: sayDoNext(words, source, priority),
    link: {
      href: `/students/${student.id}?club=${history.clubGroup}`,
      label: words.say("do-next.why", { alias: student.alias }),
    },
  };
}
