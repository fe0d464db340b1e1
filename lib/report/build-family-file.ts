import type { Words } from "@/lib/words/catalogue";
import { sayDay } from "@/lib/words/day-words";
import { langOf } from "@/lib/words/family-words";
import type { FamilyFile } from "./tell-model";
import type { Telling } from "./tell-source";

/** What a family is told, as one file to keep. Its title names nobody: it stands on a phone for whoever looks. */
export function buildFamilyFile(
  words: Words,
  { student, today, story, taskLines, filming, picture }: Telling,
): FamilyFile {
  const say = (key: string): string => words.say(`tell.file.${key}`);
  const part = (key: string, lines: readonly string[]) => ({
    heading: say(key),
    lines: lines.filter((line) => line !== ""),
  });
  const day = sayDay(words, today, "full");
  return {
    language: langOf(words),
    title: say("title"),
    ...{ heading: story.heading, picture },
    parts: [
      part("good", [story.good]),
      part("changed", story.changed),
      part("unsure", [story.unsure]),
      part("task", [story.task, ...taskLines]),
      part("contact", [story.contact]),
      part("filming", [filming]),
      part("rest", story.rest),
      part(
        "care",
        ["family.pain.child", "family.pain.grown-ups", "family.care.ball"].map((key) => words.say(key)),
      ),
    ].filter(({ lines }) => lines.length > 0),
    numbers: story.numbers.length === 0 ? null : { heading: say("numbers"), lines: story.numbers },
    foot: [words.say("tell.file.foot", { alias: student.alias, day }), say("foot.still")],
  };
}

/** Every word of a file in its order, as it is kept when it was sent. */
export function familyFileText({ heading, picture, parts, numbers, foot }: FamilyFile): string {
  const drawn = picture === null ? [] : [{ heading: picture.heading, lines: [picture.summary, ...picture.reads] }];
  const blocks = [...drawn, ...parts, ...(numbers === null ? [] : [numbers])].map((block) =>
    [block.heading, ...block.lines].join("\n"),
  );
  return [heading, ...blocks, foot.join("\n")].join("\n\n");
}
