import type { DecisionRecord } from "@/lib/domain/drill-decision";
import type { AssignmentRecord } from "@/lib/domain/drill-record";
import type { Student } from "@/lib/domain/student";
import type { Words } from "@/lib/words/catalogue";
import { sayDay } from "@/lib/words/day-words";
import { buildDecisions } from "./build-decisions";
import { cautionsFor } from "./cautions";
import type { HappenPage, HappenPart } from "./happen-model";

/** What the page on which is decided about a drill rests on. */
export interface DecideSource {
  readonly student: Student;
  readonly given: AssignmentRecord;
  readonly today: string;
  /** What happened since it began; null: it was taken back. */
  readonly since: HappenPart | null;
  readonly decisions: readonly DecisionRecord[];
  readonly dayOf: (instant: string) => string;
}

function lede(words: Words, { remeasureOn }: AssignmentRecord, today: string): string {
  const when = remeasureOn === null ? "none" : remeasureOn <= today ? "due" : "ahead";
  return words.say("decide.lede", { when, day: remeasureOn === null ? "" : sayDay(words, remeasureOn, "full") });
}

/** What a coach sees before deciding about a drill: what happened since it began, and what was decided before. */
export function buildDecidePage(words: Words, source: DecideSource): HappenPage {
  const { student, given, today, since } = source;
  const runs = given.state === "stands" && given.end === null;
  const decisions = buildDecisions(words, source);
  const own = source.decisions.some(({ assignmentId }) => assignmentId === given.id);
  return {
    title: words.say(runs ? "decide.title" : "decide.title.over", { alias: student.alias, drill: given.drill }),
    documentTitle: words.say("document-title", { page: words.say("decide.document-title") }),
    lede: runs ? lede(words, given, today) : words.say("decide.lede.over"),
    back: { href: `/students/${student.id}/drills/${encodeURIComponent(given.id)}`, label: words.say("decide.back") },
    actions: [],
    // Its table stands on the drill's page too, with its file.
    parts: [...(since === null ? [] : [since]), ...(decisions === null || !own ? [] : [decisions])],
    cautions: cautionsFor(words, student, today),
  };
}
