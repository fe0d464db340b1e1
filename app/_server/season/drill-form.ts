import { dayFromNumber, dayNumber } from "@/lib/domain/calendar-day";
import type { AssignmentRecord } from "@/lib/domain/drill-record";
import type { Fundamental } from "@/lib/domain/fundamental";
import { NEW_DRILL } from "@/lib/ingest/parse-drill-form";
import type { FormModel } from "@/lib/report/form-model";
import type { DrillProposal, ProposedDose } from "@/lib/report/propose-drill";
import type { Words } from "@/lib/words/catalogue";
import { sayDay } from "@/lib/words/day-words";
import { sayFundamental } from "@/lib/words/say-fundamental";
import type { FormDraft } from "../draft/form-draft";
import { stopPart } from "../drill/stop-part";
import { field } from "./student-form";

/** What the form that gives a drill begins with. */
export interface DrillFormSource {
  readonly alias: string;
  readonly today: string;
  readonly fundamentals: readonly Fundamental[];
  readonly proposal: DrillProposal;
  /** The fundamental that is in hand; empty: nobody says. */
  readonly fundamentalId: string;
  /** Days before a film that are kept free of practice. */
  readonly rest: number;
  /** Why it isn't given today, in sentences; empty: nothing stands against it. */
  readonly stop: readonly string[];
  /** The one that this stands in for; null: none. */
  readonly instead: AssignmentRecord | null;
  readonly draft: FormDraft | null;
}

type FormPart = FormModel["parts"][number];
type One = (spec: Parameters<typeof field>[3]) => ReturnType<typeof field>;

function drillPart(words: Words, source: DrillFormSource, one: One): FormPart {
  const { fundamentals, proposal, fundamentalId, draft } = source;
  const nameOf = (id: string): string => {
    const fundamental = fundamentals.find((each) => each.id === id);
    return fundamental ? sayFundamental(words, fundamental) : id;
  };
  const known = proposal.library.map(({ id, name, fundamentalId: of }) => ({
    value: id,
    label: words.say("drill-form.known", { drill: name, name: nameOf(of) }),
  }));
  const fresh = draft?.entries.some(([name, value]) => name === "drill" && value === NEW_DRILL) ?? false;
  return {
    margin: words.say("practice.drill"),
    explains: words.say("drill-form.part.drill.explains"),
    fields: [
      one({
        name: "drill",
        kind: "select",
        required: "yes",
        value: proposal.drillId ?? NEW_DRILL,
        options: [...known, { value: NEW_DRILL, label: words.say("drill-form.new") }],
      }),
    ],
    ...(known.length > 1 ? { refresh: words.say("drill-form.fill-dose") } : {}),
    more: {
      summary: words.say("drill-form.new"),
      fields: [
        one({ name: "name", kind: "text" }),
        one({
          name: "fundamental",
          kind: "select",
          ...(fundamentalId === "" ? {} : { value: fundamentalId }),
          options: fundamentals.map((each) => ({ value: each.id, label: sayFundamental(words, each) })),
        }),
        one({ name: "how", kind: "textarea" }),
        one({ name: "cautions", kind: "textarea" }),
      ],
      open: fresh || proposal.drillId === null ? "yes" : "no",
    },
  };
}

/** What of a dose a form's fields hold. */
export function doseEntries(dose: ProposedDose): Readonly<Record<string, string>> {
  const number = (value: number | null): string => (value === null ? "" : String(value));
  return {
    reps: number(dose.reps),
    minutes: number(dose.minutes),
    daysAWeek: number(dose.daysAWeek),
    words: dose.words,
    stop: dose.stop,
    remeasureOn: dose.remeasureOn,
  };
}

function dosePart(words: Words, source: DrillFormSource, one: One): FormPart {
  const { proposal, instead, rest } = source;
  const { dose } = proposal;
  const filled = doseEntries(dose);
  const from = dayFromNumber(dayNumber(dose.remeasureOn) - rest);
  const by = words.say(`drill-form.dose.${dose.by}`, {
    day: dose.givenOn === null ? "" : sayDay(words, dose.givenOn, "day-year"),
  });
  return {
    margin: words.say("season.drills.dose"),
    explains: `${by} ${words.say("drill-form.part.dose.explains")}`,
    fields: [
      one({ name: "start", kind: "date", required: "yes", value: instead?.start ?? source.today }),
      ...(["reps", "minutes", "daysAWeek"] as const).map((name) => one({ name, kind: "number", value: filled[name] })),
      one({ name: "words", kind: "text", value: filled.words }),
      one({ name: "stop", kind: "text", value: filled.stop }),
      one({
        name: "remeasureOn",
        kind: "date",
        value: filled.remeasureOn,
        hint: words.say("drill-form.remeasureOn.hint", { rest, day: sayDay(words, from, "short") }),
      }),
    ],
  };
}

/** The form that gives a drill: filled in as it was last or is usually given, so that one press more saves it. */
export function buildDrillForm(words: Words, source: DrillFormSource): FormModel {
  const { instead, draft } = source;
  const one: One = (spec) => field(words, draft, "drill-form", spec);
  return {
    heading: words.say("drill-form.heading", { alias: source.alias }),
    explains: words.say(instead === null ? "drill-form.explains" : "drill-form.explains.instead"),
    parts: [
      ...stopPart(words, source.stop, one, words.say("stop-first.go-on")),
      drillPart(words, source, one),
      dosePart(words, source, one),
    ],
    grid: null,
    submit: words.say(instead === null ? "drill-form.submit" : "event-form.submit.instead"),
    refusal: draft?.refusal ?? "",
    hidden: instead === null ? [] : [{ name: "instead", value: instead.id }],
  };
}

/** The form that stops a drill. */
export function buildStopForm(
  words: Words,
  source: Pick<DrillFormSource, "today" | "draft"> & {
    readonly studentId: string;
    readonly assignmentId: string;
  },
): FormModel {
  const { draft } = source;
  const one = (spec: Parameters<typeof field>[3]) => field(words, draft, "drill-stop", spec);
  return {
    heading: words.say("drill-stop.heading"),
    explains: words.say("drill-stop.explains"),
    parts: [
      {
        margin: words.say("drill-stop.heading"),
        explains: "",
        fields: [
          one({ name: "end", kind: "date", required: "yes", value: source.today }),
          one({ name: "why", kind: "text", required: "yes" }),
        ],
      },
    ],
    grid: null,
    submit: words.say("drill-stop.heading"),
    refusal: draft?.refusal ?? "",
    hidden: [
      { name: "studentId", value: source.studentId },
      { name: "assignmentId", value: source.assignmentId },
    ],
  };
}
