import type { Words } from "@/lib/words/catalogue";
import { sayFundamental } from "@/lib/words/say-fundamental";
import { sayFromTo, sayHappened } from "@/lib/words/say-verdict";
import type { BriefFinding } from "./brief-finding";
import type { BriefSource } from "./brief-source";
import { trackHref } from "./roster-rows";
import { changeTone } from "./said";

/** In the coach's order. `moved` is neither better nor worse: within the band, past it, or no nearer to it. */
const WORDS = ["slip", "gain", "moved"] as const;

const WORD_OF = { away: "slip", toward: "gain", neither: "moved" } as const;

/**
 * What of the newly proved changes is there to be done: slips first, then gains, then moves that are neither, each in the
 * order in which it came. Only of tracks on the roster's list: whatever isn't, is named nowhere here.
 */
export function findProofs(words: Words, source: BriefSource): readonly BriefFinding[] {
  const found = source.proofs.flatMap(({ key, student, fundamental, summary }): BriefFinding[] => {
    const { change, listed } = summary.verdict;
    if (change === null || listed !== true) return [];
    const word = WORD_OF[changeTone({ change, standing: "listed" })];
    const args = () => ({
      alias: student.alias,
      name: sayFundamental(words, fundamental),
      levels: sayFromTo(words, change, fundamental.unit),
      happened: sayHappened(words, change),
      how: change.moved ?? "same",
      position: summary.verdict.position ?? "none",
    });
    return [
      {
        word,
        studentId: student.id,
        alias: student.alias,
        key: `${word} ${key}`,
        fundamental: { href: trackHref(summary), label: sayFundamental(words, fundamental) },
        say: () => words.say(`brief.next.${word}.text`, args()),
        next: () => ({
          heading: words.say(`brief.next.${word}`, args()),
          text: words.say(`brief.next.${word}.text`, args()),
          alters: words.say(`brief.next.${word}.alters`, args()),
        }),
      },
    ];
  });
  return WORDS.flatMap((each) => found.filter(({ word }) => word === each));
}
