import type { ToldFinding } from "@/lib/domain/told";
import type { Words } from "@/lib/words/catalogue";
import { familyReader } from "./family-findings";
import type { StorySource } from "./family-story-source";
import { type StoryFinding, storyFindings } from "./story-findings";
import { type StoryTelling, sayStoryCorrection, sayStoryFinding, sayStoryTold } from "./story-sentences";

const SAID: Partial<Readonly<Record<StoryFinding["kind"], ToldFinding["said"]>>> = {
  ...{ better: "better", worse: "worse", within: "moved", through: "moved", elsewhere: "moved" },
};

/** A change as it would be told, with every text that tells it: its sentence, or the heading that names whose it is. */
function changeOf(words: Words, found: StoryFinding, telling: StoryTelling) {
  const said = SAID[found.kind];
  const { verdict, history } = found.track;
  if (said === undefined) return [];
  const change = verdict.change === null ? null : { from: verdict.change.from, to: verdict.change.to };
  const finding: ToldFinding = { fundamentalId: history.fundamental.id, kind: "changed", said, change };
  const heading = sayStoryFinding(words, found, telling, { name: telling.source.student.alias });
  return [{ finding, texts: [sayStoryTold(words, found, telling), heading] }];
}

/**
 * The changes that a text really tells, and takes back: those whose sentence stands in it as it was sent. What was left out of it
 * for its length, or by the coach, was not told.
 *
 * @param source of the story that the text was made from
 * @param text as it is sent
 */
export function toldFindings(words: Words, source: StorySource, text: string): readonly ToldFinding[] {
  const telling: StoryTelling = { source, reader: familyReader(source.student, source.today) };
  const { told, corrected } = storyFindings(source);
  const back = corrected.map((each) => ({
    finding: {
      ...{ fundamentalId: each.track.history.fundamental.id, kind: "corrected", said: each.correction.said },
      change: null,
    } as const satisfies ToldFinding,
    texts: [sayStoryCorrection(words, each, telling, "told")],
  }));
  return [...back, ...told.flatMap((found) => changeOf(words, found, telling))]
    .filter(({ texts }) => texts.some((each) => text.includes(each)))
    .map(({ finding }) => finding);
}
