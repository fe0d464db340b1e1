import type { Fundamental } from "@/lib/domain/fundamental";
import type { Waiting } from "@/lib/domain/waiting";
import type { Words } from "@/lib/words/catalogue";
import { sayDay, sayStretch } from "@/lib/words/day-words";
import { sayFundamental } from "@/lib/words/say-fundamental";
import type { HappenPart } from "./happen-model";

/** What the part on waiting rests on. */
export interface WaitingSource {
  readonly studentId: string;
  /** What is measured of the student, in the order of work. */
  readonly measured: readonly Fundamental[];
  /** Ids of those for which a drill runs or is to begin. */
  readonly drilled: ReadonlySet<string>;
  /** Oldest first, what was taken back too. */
  readonly waits: readonly Waiting[];
  /** Why nothing new may be marked, and what to do about it; null: it may. */
  readonly whyNot: string | null;
}

/** What is measured and has no drill, each with the button that marks or ends its waiting on purpose; null: nothing is. */
export function buildWaiting(words: Words, source: WaitingSource): HappenPart | null {
  const { studentId, measured, drilled, waits, whyNot } = source;
  const standing = waits.filter(({ voidedAt }) => voidedAt === null);
  const lasts = (id: string) => standing.find((each) => each.fundamentalId === id && each.untilDay === null) ?? null;
  const shown = measured.filter(({ id }) => lasts(id) !== null || !drilled.has(id));
  if (shown.length === 0) return null;
  const stateOf = (id: string): string => {
    const now = lasts(id);
    if (now !== null) return words.say("waiting.since", { day: sayDay(words, now.fromDay, "full"), who: now.who });
    const last = standing.findLast((each) => each.fundamentalId === id);
    return last === undefined || last.untilDay === null
      ? words.say("waiting.none")
      : words.say("waiting.was", { days: sayStretch(words, last.fromDay, last.untilDay) });
  };
  return {
    margin: words.say("waiting.margin"),
    explains: words.say("waiting.explains"),
    heading: words.say("waiting.heading", { count: shown.filter(({ id }) => lasts(id) !== null).length }),
    paragraphs: [words.say("waiting.why"), ...(whyNot === null ? [] : [whyNot])],
    facts: [],
    table: {
      caption: words.say("waiting.caption"),
      columns: (["fundamental", "state"] as const).map((column) => ({
        label: words.say(`waiting.column.${column}`),
        align: "start" as const,
      })),
      rows: shown.map((fundamental) => ({
        cells: [sayFundamental(words, fundamental), stateOf(fundamental.id)],
        tone: "plain" as const,
      })),
    },
    open: null,
    press: {
      label: words.say("waiting.column.press"),
      buttons: shown.map((fundamental) => {
        const wish = lasts(fundamental.id) === null ? "begin" : "end";
        if (wish === "begin" && whyNot !== null) return null;
        return {
          label: words.say(`waiting.press.${wish}`, { name: sayFundamental(words, fundamental) }),
          hidden: { studentId, fundamentalId: fundamental.id, wish },
        };
      }),
    },
  };
}
