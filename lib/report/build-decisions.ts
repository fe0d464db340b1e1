import type { DecisionRecord } from "@/lib/domain/drill-decision";
import type { AssignmentRecord } from "@/lib/domain/drill-record";
import type { Words } from "@/lib/words/catalogue";
import { sayDay } from "@/lib/words/day-words";
import { sayRecorded } from "./build-events";
import type { HappenPart } from "./happen-model";

const COLUMNS = ["day", "decision", "why", "was", "who"] as const;

/**
 * What was decided about a drill on the days on which it was to be measured again, latest first.
 *
 * @param source.decisions of the student, oldest first; those about other drills are left out
 * @returns null for a drill that was ended or taken back without one: nothing will be decided any more
 */
export function buildDecisions(
  words: Words,
  source: {
    readonly given: AssignmentRecord;
    readonly decisions: readonly DecisionRecord[];
    readonly dayOf: (instant: string) => string;
  },
): HappenPart | null {
  const { given, dayOf } = source;
  const own = source.decisions.filter(({ assignmentId }) => assignmentId === given.id).reverse();
  const runs = given.state === "stands" && given.end === null;
  if (own.length === 0 && !runs) return null;
  return {
    margin: words.say("drill-decisions"),
    explains: words.say("drill-decisions.explains"),
    heading: words.say("drill-decisions.heading", { count: own.length }),
    paragraphs: own.length === 0 ? [words.say("drill-decisions.none")] : [],
    facts: [],
    table:
      own.length === 0
        ? null
        : {
            caption: words.say("drill-decisions.caption"),
            columns: COLUMNS.map((column) => ({ label: words.say(`drill-decisions.${column}`), align: "start" })),
            rows: own.map((each) => ({
              cells: [
                sayDay(words, each.day, "full"),
                words.say(`drill-decision.${each.decision}`),
                each.why,
                each.remeasureWas === null ? "" : sayDay(words, each.remeasureWas, "short"),
                sayRecorded(words, each, dayOf),
              ],
              tone: "plain",
            })),
          },
    open: null,
  };
}
