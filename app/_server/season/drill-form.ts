import type { Drill } from "@/db/read/drills";
import type { AssignmentRecord } from "@/lib/domain/drill-record";
import type { Fundamental } from "@/lib/domain/fundamental";
import { NEW_DRILL } from "@/lib/ingest/parse-drill-form";
import type { FormModel } from "@/lib/report/form-model";
import type { Words } from "@/lib/words/catalogue";
import { sayFundamental } from "@/lib/words/say-fundamental";
import type { FormDraft } from "../draft/form-draft";
import { field } from "./student-form";

/** What the form that gives a drill begins with. */
export interface DrillFormSource {
  readonly alias: string;
  readonly today: string;
  readonly library: readonly Drill[];
  readonly fundamentals: readonly Fundamental[];
  /** The one that this stands in for; null: none. */
  readonly instead: AssignmentRecord | null;
  readonly draft: FormDraft | null;
}

/** The form that gives a drill: one of the library, or a new one. */
export function buildDrillForm(words: Words, source: DrillFormSource): FormModel {
  const { library, fundamentals, instead, draft } = source;
  const one = (spec: Parameters<typeof field>[3]) => field(words, draft, "drill-form", spec);
  const nameOf = (id: string): string => {
    const fundamental = fundamentals.find((each) => each.id === id);
    return fundamental ? sayFundamental(words, fundamental) : id;
  };
  const known = library.map(({ id, name, fundamentalId }) => ({
    value: id,
    label: words.say("drill-form.known", { drill: name, name: nameOf(fundamentalId) }),
  }));
  const added = [
    one({ name: "name", kind: "text" }),
    one({
      name: "fundamental",
      kind: "select",
      options: fundamentals.map((each) => ({ value: each.id, label: sayFundamental(words, each) })),
    }),
    one({ name: "how", kind: "textarea" }),
    one({ name: "cautions", kind: "textarea" }),
  ];
  const fresh = draft?.entries.some(([name, value]) => name === "drill" && value === NEW_DRILL) ?? false;
  return {
    heading: words.say("drill-form.heading", { alias: source.alias }),
    explains: words.say(instead === null ? "drill-form.explains" : "drill-form.explains.instead"),
    parts: [
      {
        margin: words.say("practice.drill"),
        explains: words.say("drill-form.part.drill.explains"),
        fields: [
          one({
            name: "drill",
            kind: "select",
            required: "yes",
            value: instead?.drillId ?? library[0]?.id ?? NEW_DRILL,
            options: [...known, { value: NEW_DRILL, label: words.say("drill-form.new") }],
          }),
        ],
        more: {
          summary: words.say("drill-form.new"),
          fields: added,
          open: fresh || library.length === 0 ? "yes" : "no",
        },
      },
      {
        margin: words.say("season.drills.dose"),
        explains: words.say("drill-form.part.dose.explains"),
        fields: [
          one({ name: "start", kind: "date", required: "yes", value: instead?.start ?? source.today }),
          one({ name: "reps", kind: "number" }),
          one({ name: "minutes", kind: "number" }),
          one({ name: "daysAWeek", kind: "number" }),
          one({ name: "words", kind: "text", value: instead?.dose ?? "" }),
          one({ name: "stop", kind: "text" }),
        ],
      },
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
