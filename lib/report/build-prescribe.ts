import type { AssignmentRecord } from "@/lib/domain/drill-record";
import type { Words } from "@/lib/words/catalogue";
import { sayDay } from "@/lib/words/day-words";
import { sayDose } from "@/lib/words/say-dose";
import type { Fact, Link } from "./basic-model";
import type { DrillProposal } from "./propose-drill";
import { sayRemeasure } from "./say-remeasure";

/** The drill for a fundamental: the one that runs, or the one that a press opens the form of. */
export interface PrescribePart {
  readonly margin: string;
  readonly heading: string;
  /** Why it isn't given today; empty: nothing stands against it. */
  readonly stop: readonly string[];
  readonly facts: readonly Fact[];
  /** The button: opens the drill's form filled in, or what is to be decided about the one that runs. */
  readonly press: Link;
  readonly links: readonly Link[];
}

/** What it rests on. */
export interface PrescribeSource {
  readonly studentId: string;
  readonly fundamentalId: string;
  readonly proposal: DrillProposal;
  /** The drill for it that runs and was given last; null: none. */
  readonly running: AssignmentRecord | null;
  readonly stop: readonly string[];
  readonly today: string;
}

function factsOf(
  words: Words,
  given: Pick<AssignmentRecord, "dose" | "reps" | "minutesADay" | "daysAWeek" | "stopRule">,
): Fact[] {
  const dose = sayDose(words, { ...given, stopRule: "" });
  const { stopRule } = given;
  return [
    ...(dose === "" ? [] : [{ name: words.say("season.drills.dose"), value: dose, note: "" }]),
    {
      name: words.say("drill.fact.stops"),
      value: stopRule === "" ? words.say("drill.stops.pain") : words.say("drill.stops.rule", { stop: stopRule }),
      note: "",
    },
  ];
}

function runningPart(words: Words, source: PrescribeSource, running: AssignmentRecord): PrescribePart {
  const { studentId, fundamentalId, stop, today } = source;
  const page = `/students/${studentId}/drills`;
  const due = running.remeasureOn !== null && running.remeasureOn <= today ? running.remeasureOn : null;
  const open = { href: `${page}/${running.id}`, label: words.say("prescribe.open", { drill: running.drill }) };
  return {
    margin: words.say("prescribe.margin"),
    heading: words.say("prescribe.runs", { drill: running.drill, day: sayDay(words, running.start, "short") }),
    stop,
    facts: [
      ...factsOf(words, running),
      { name: words.say("drill.fact.remeasure"), value: sayRemeasure(words, running.remeasureOn, today), note: "" },
    ],
    press:
      due === null
        ? open
        : {
            href: `${page}/${running.id}/decide`,
            label: words.say("prescribe.due", { drill: running.drill, day: sayDay(words, due, "short") }),
          },
    links: [
      ...(due === null ? [] : [open]),
      { href: `${page}/new?${new URLSearchParams({ for: fundamentalId })}`, label: words.say("prescribe.another") },
    ],
  };
}

/** The drill for a fundamental, one press away: what runs and when it is measured again, or what would be given and how. */
export function buildPrescribe(words: Words, source: PrescribeSource): PrescribePart {
  const { studentId, fundamentalId, proposal, running, stop, today } = source;
  if (running !== null) return runningPart(words, source, running);
  const { dose } = proposal;
  const drill = proposal.library.find(({ id }) => id === proposal.drillId);
  const href = `/students/${studentId}/drills/new?${new URLSearchParams({ for: fundamentalId })}`;
  const given = { ...dose, dose: dose.words, minutesADay: dose.minutes, stopRule: dose.stop };
  return {
    margin: words.say("prescribe.margin"),
    heading: drill === undefined ? words.say("prescribe.none") : drill.name,
    stop,
    facts:
      drill === undefined
        ? []
        : [
            ...factsOf(words, given),
            { name: words.say("drill.fact.remeasure"), value: sayRemeasure(words, dose.remeasureOn, today), note: "" },
          ],
    press: {
      href,
      label: drill === undefined ? words.say("prescribe.give-new") : words.say("prescribe.give", { drill: drill.name }),
    },
    links: [],
  };
}
