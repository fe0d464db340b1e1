import type { Words } from "@/lib/words/catalogue";
import { sayPlace } from "@/lib/words/say-place";
import type { FamilyPage, FamilyPart } from "./family-model";
import type { FamilySource } from "./family-source";

/** Kinds of an event on which practice rests. */
const PAUSES: readonly string[] = ["injury", "pause"];

function stopPart(words: Words, { student, link, today, practice, events }: FamilySource): FamilyPage["stop"] {
  const said = practice.findLast(({ pain }) => pain !== null);
  const paused = events.some(
    ({ kind, day, endDay }) => PAUSES.includes(kind) && day <= today && (endDay ?? today) >= today,
  );
  if (!said?.pain && !paused) return null;
  return {
    heading: words.say("family.stop.heading"),
    lines: [
      said?.pain
        ? words.say("family.stop.said", { place: sayPlace(words, said.pain) })
        : words.say("family.stop.paused"),
      words.say("family.pain.child"),
      words.say("family.pain.grown-ups"),
    ],
    over: said
      ? {
          label: words.say("family.stop.over", { alias: student.alias }),
          action: `/api/family/${link.id}/practice/back`,
          hidden: [{ name: "hurts", value: "over" }],
        }
      : null,
  };
}

function taskPart(words: Words, { task }: FamilySource): FamilyPart {
  if (task === null) return { heading: words.say("family.task.none"), lines: [words.say("family.task.none.text")] };
  return {
    heading: words.say("family.task.heading", { drill: task.drill }),
    lines: [
      task.how,
      task.dose,
      task.rest ?? "",
      task.lot ?? "",
      task.cautions,
      words.say("family.task.missed"),
    ].filter((text) => text !== ""),
  };
}

/** The one task, or in its place that practice rests: never both. */
export function familyWork(words: Words, source: FamilySource): Pick<FamilyPage, "stop" | "task"> {
  const stop = stopPart(words, source);
  return { stop, task: stop === null ? taskPart(words, source) : null };
}
