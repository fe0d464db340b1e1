import type { Words } from "@/lib/words/catalogue";
import { sayDay } from "@/lib/words/day-words";
import { buildFamilyPractice } from "./build-family-practice";
import { familyReader } from "./family-findings";
import type { FamilyPage } from "./family-model";
import { familyRights } from "./family-rights";
import type { FamilySource } from "./family-source";
import { familyTold } from "./family-told";
import { familyWork } from "./family-work";

/** What a family reads: what is good and counted, what changed, what can't be told, one task; then the log and what it may ask. */
export function buildFamilyPage(words: Words, source: FamilySource): FamilyPage {
  const { student, today, practice, story, look, link } = source;
  const { alias } = student;
  const young = familyReader(student, today) === "young";
  const last = source.videos.at(-1);
  const work = familyWork(words, source);
  return {
    title: story.heading,
    seen: last === undefined ? "" : words.say("family-page.seen", { day: sayDay(words, last.day, "with-weekday") }),
    look,
    notice:
      source.done !== null && words.has(`family.done.${source.done}`)
        ? words.say(`family.done.${source.done}`, { alias })
        : "",
    good: {
      heading: words.say("family.good.heading"),
      lines: [...(young ? [words.say("family.young.fun")] : []), story.good, ...story.alsoGood],
    },
    told: familyTold(story),
    ...work,
    // Nobody is asked for swings while something hurts.
    filming: work.stop === null ? look.filming : null,
    practice: buildFamilyPractice(words, {
      ...{ alias, pageId: link.id, today, entries: practice, reader: familyReader(student, today) },
      ...{ key: source.key, typed: source.typed, most: source.most },
      ...{ practice: work.stop === null ? "goes-on" : "rests" },
      ...{ minutes: source.task?.minutes ?? null, daysAWeek: source.task?.daysAWeek ?? null },
    }),
    care: {
      heading: words.say("family.care.heading"),
      lines: ["family.pain.child", "family.pain.grown-ups", "family.care.ball"].map((key) => words.say(key)),
    },
    more: story.rest,
    ...familyRights(words, source),
  };
}
