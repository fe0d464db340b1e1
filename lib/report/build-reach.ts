import type { Words } from "@/lib/words/catalogue";
import { sayDay } from "@/lib/words/day-words";
import { sayReach } from "@/lib/words/say-reach";
import { isAway } from "./away-days";
import type { FundamentalSource } from "./fundamental-source";
import { saidVerdict } from "./said";

/**
 * The sentence on when a fundamental lies inside its band; empty: no question.
 *
 * Asked only of a change that is said, so of one on the roster's list; a date is a promise that an unlisted one can't carry.
 */
export function buildReach(words: Words, source: Pick<FundamentalSource, "history" | "verdict" | "today">): string {
  const { history, verdict, today } = source;
  const said = saidVerdict(verdict);
  const last = history.sessions.filter((entry) => entry.apart === null).at(-1)?.session.day;
  if (verdict.reach === null || last === undefined || (said !== "gain" && said !== "slip")) return "";
  if (verdict.reach.kind === "dates" && isAway(last, today))
    return words.say("reach.away", { day: sayDay(words, last, "full") });
  return sayReach(words, verdict.reach, last, today);
}
