import type { Words } from "@/lib/words/catalogue";
import type { Telling } from "./tell-source";
import { toldFindings } from "./told-findings";

/** A generated sentence of a telling, by a key that stays the same while its words may change. */
export interface TellPiece {
  readonly key: string;
  readonly text: string;
  /** Whether it may be left out of a letter: not what takes something back, nor a stop. */
  readonly may: "leave" | "stay";
}

/** How many of the sentences on changes take something back; they come first. */
export function correctionsIn(words: Words, { story, source }: Telling): number {
  return toldFindings(words, source, story.changed.join(" ")).filter(({ kind }) => kind === "corrected").length;
}

/** The generated sentences of a telling in their order: what is good, what changed, what can't be told, the task, the video, the rest. */
export function tellPieces(words: Words, telling: Telling): readonly TellPiece[] {
  const { story, taskLines, filming, stopped } = telling;
  const back = correctionsIn(words, telling);
  const piece = (key: string, text: string, may: TellPiece["may"] = "leave"): TellPiece => ({ key, text, may });
  return [
    piece("good", story.good),
    ...story.changed.map((text, at) => piece(`changed-${at + 1}`, text, at < back ? "stay" : "leave")),
    piece("unsure", story.unsure),
    piece("contact", story.contact),
    piece("task", [story.task, ...taskLines].join(" "), stopped === "yes" ? "stay" : "leave"),
    piece("filming", filming),
    ...story.rest.map((text, at) => piece(`rest-${at + 1}`, text)),
  ].filter(({ text }) => text !== "");
}
