import type { Fundamental } from "@/lib/domain/fundamental";
import type { TrackVerdict } from "@/lib/domain/track-verdict";
import type { Words } from "@/lib/words/catalogue";
import { sayLevel, saySureShort } from "@/lib/words/number-words";
import { provedAlone, type SaidVerdict, saidKey } from "./said";

/** What a line about a verdict needs of it. */
export interface JudgedLine {
  readonly verdict: SaidVerdict & {
    /** Only the middle and the 95 of 100 are said. */
    readonly levelNow: Pick<NonNullable<TrackVerdict["levelNow"]>, "estimate" | "low95" | "high95"> | null;
    readonly noChange: number;
  };
  readonly sessions: number;
}

/** A verdict in one line: its word, its level, how sure, and the sessions that it was reached on. */
export function sayJudged(words: Words, { verdict, sessions }: JudgedLine, fundamental: Fundamental): string {
  return words.say("known.judged", {
    word: words.say(saidKey(verdict)),
    alone: provedAlone(verdict),
    level: verdict.levelNow === null ? "" : sayLevel(words, verdict.levelNow, fundamental.unit),
    hasLevel: verdict.levelNow === null ? "no" : "yes",
    sure: saySureShort(words, verdict.noChange),
    sessions,
  });
}
