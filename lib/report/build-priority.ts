import type { Fundamental } from "@/lib/domain/fundamental";
import type { PriorityChoice } from "@/lib/domain/priority-choice";
import type { Student } from "@/lib/domain/student";
import type { Priority } from "@/lib/verdict/choose-priority";
import type { Words } from "@/lib/words/catalogue";
import { sayDay } from "@/lib/words/day-words";
import { sayLevel } from "@/lib/words/number-words";
import { sayFundamental } from "@/lib/words/say-fundamental";
import type { HappenPage, HappenPart } from "./happen-model";
import type { WorkTrack } from "./order-of-work";
import { sayStop } from "./say-work";

/** Everything that the page on what is in hand rests on. */
export interface PrioritySource {
  readonly student: Student;
  /** Name of the group of clubs; empty: nothing is measured yet. */
  readonly clubName: string;
  readonly clubGroup: string | null;
  readonly fundamentals: readonly Fundamental[];
  readonly priority: Priority<WorkTrack>;
  /** With these clubs, oldest first. */
  readonly choices: readonly PriorityChoice[];
}

/** Where a fundamental is, for a list to choose from. */
export function sayChoice(words: Words, { fundamental, summary }: Pick<WorkTrack, "fundamental" | "summary">): string {
  const name = sayFundamental(words, fundamental);
  const level = summary?.verdict.levelNow ?? null;
  if (level === null) return words.say("priority.option.unmeasured", { name });
  return words.say("priority.option", {
    name,
    level: sayLevel(words, level, fundamental.unit),
    position: words.say(`position.${summary?.verdict.position ?? "none"}`),
  });
}

function part(margin: string, heading: string, paragraphs: readonly string[]): HappenPart {
  return { margin, explains: "", heading, paragraphs, facts: [], table: null, open: null };
}

function rulePart(words: Words, { priority, student }: PrioritySource): HappenPart {
  const { rule, stop } = priority;
  return part(
    words.say("priority.rule"),
    rule === null
      ? words.say("priority.rule.nothing")
      : words.say("priority.rule.says", { name: sayFundamental(words, rule.item.fundamental), reason: rule.reason }),
    [
      ...(stop === null ? [] : [words.say("priority.stopped", { stop: sayStop(words, stop), alias: student.alias })]),
      words.say("priority.rule.text"),
    ],
  );
}

function historyPart(words: Words, { choices, fundamentals, clubName }: PrioritySource): HappenPart {
  const nameOf = (id: string): string => {
    const found = fundamentals.find((each) => each.id === id);
    return found ? sayFundamental(words, found) : id;
  };
  const heading = words.say("priority.history.heading", { choices: choices.length, club: clubName });
  if (choices.length === 0) return part(words.say("priority.history"), heading, [words.say("priority.history.none")]);
  return {
    ...part(words.say("priority.history"), heading, []),
    table: {
      caption: words.say("priority.history.caption", { club: clubName }),
      columns: ["day", "what", "why", "who"].map((column) => ({
        label: words.say(`priority.history.${column}`),
        align: "start" as const,
      })),
      rows: [...choices].reverse().map(({ day, fundamentalId, reason, who }, at) => ({
        cells: [
          sayDay(words, day, "full"),
          fundamentalId === null ? words.say("priority.by-order") : nameOf(fundamentalId),
          reason,
          who,
        ],
        tone: at === 0 ? ("plain" as const) : ("quiet" as const),
      })),
    },
  };
}

/** What is in hand and who put it there: what the order of work says by itself, and every choice of a coach. */
export function buildPriorityPage(words: Words, source: PrioritySource): HappenPage {
  const { student, clubGroup, clubName } = source;
  return {
    title: words.say("priority.title", { alias: student.alias }),
    documentTitle: words.say("document-title", { page: words.say("priority.document-title") }),
    lede: words.say(clubGroup === null ? "priority.lede.none" : "priority.lede", { club: clubName }),
    back: {
      href: `/students/${student.id}${clubGroup === null ? "" : `?club=${clubGroup}`}`,
      label: words.say("fundamental-page.back", { alias: student.alias }),
    },
    actions: [],
    parts: clubGroup === null ? [] : [rulePart(words, source), historyPart(words, source)],
    cautions: [],
  };
}
