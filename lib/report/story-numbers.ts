import type { Words } from "@/lib/words/catalogue";
import { sayLevel } from "@/lib/words/number-words";
import { capital } from "@/lib/words/say-family";
import { saySizeBelow, sayStoryPart } from "@/lib/words/say-family-story";
import { CHANGED, type StoryFinding } from "./story-findings";
import type { StoryTelling } from "./story-sentences";

function sayNumbers(words: Words, { track, kind, plateau }: StoryFinding, { source }: StoryTelling): string {
  const { history, verdict } = track;
  const { fundamental } = history;
  const of = capital(sayStoryPart(words, { fundamental, hand: source.student.hand, whose: "your" }));
  if (CHANGED.includes(kind) && verdict.change !== null) {
    const [before, after] = [verdict.change.before, verdict.change.after].map((level) =>
      sayLevel(words, level, fundamental.unit),
    );
    return words.say("family-story.numbers.change", { of, before: before ?? "", after: after ?? "" });
  }
  // A change that is being checked is told without a size: it may be none.
  if (kind === "checking" || kind === "checking-better") return "";
  const steady = verdict.verdict === "steady" ? verdict.smallestWorthwhile : verdict.changeBelow;
  const below = plateau !== null && "below" in plateau ? plateau.below : steady;
  if (below === null || verdict.change !== null) return "";
  return words.say("family-story.numbers.same", { of, below: saySizeBelow(words, below, fundamental.unit) });
}

/** Sizes of what is told, for behind “show the numbers”; the youngest are told none. */
export function storyNumbers(words: Words, told: readonly StoryFinding[], telling: StoryTelling): readonly string[] {
  if (telling.reader === "young") return [];
  const lines = told.map((found) => sayNumbers(words, found, telling)).filter((text) => text !== "");
  const doubt = lines.some((line) => line.includes("±")) ? [words.say("family-story.numbers.doubt")] : [];
  return [...lines, ...doubt];
}
