import type { Unit } from "@/lib/domain/fundamental";
import type { OwnedWatch } from "@/lib/domain/track-verdict";
import type { Words } from "./catalogue";
import { sayDay } from "./day-words";
import { sayLevel, timesOf } from "./number-words";

/** The watch over an owned fundamental in words; for the coach alone. */
export interface SaidWatch {
  /** “Look again: two films below its level”, or what was so on a day six weeks ago. */
  readonly short: string;
  /** Since when, by how much, and what it is not. */
  readonly sentence: string;
  /** The same under a heading that says to look again. */
  readonly listed: string;
  /** How well the films fit, and how often such an alarm is for nothing. */
  readonly detail: readonly string[];
}

/**
 * Says an alarm.
 *
 * @param lastDay day of the track's last film, where that is too long ago to be called current; null: it is current
 */
export function sayWatch(words: Words, watch: OwnedWatch, unit: Unit, lastDay: string | null): SaidWatch {
  const { size, direction } = watch;
  const off = direction === "up" ? size : { estimate: -size.estimate, low95: -size.high95, high95: -size.low95 };
  const args = {
    films: watch.sessions,
    side: words.say(`watch.side.${direction}`),
    since: sayDay(words, watch.since, "short"),
    size: sayLevel(words, off, unit),
    day: lastDay === null ? "" : sayDay(words, lastDay, "full"),
  };
  const tense = lastDay === null ? "now" : "away";
  return {
    short: words.say(`watch.short.${tense}`, args),
    sentence: words.say(`watch.sentence.${tense}`, args),
    listed: words.say("watch.listed", args),
    detail: [
      words.say("watch.fits", { ...timesOf(words, watch.logBayesFactor), way: words.say(`watch.way.${direction}`) }),
      words.say("watch.promise"),
    ],
  };
}
