import type { FiledEvent } from "@/lib/domain/event-record";
import { type EventKind, PAIN_PLACES } from "@/lib/domain/student";
import { EVENT_FIELDS } from "@/lib/ingest/parse-event-form";
import { type EventSource, sayAnew } from "@/lib/report/build-event";
import type { FieldModel, FormModel } from "@/lib/report/form-model";
import type { Words } from "@/lib/words/catalogue";
import type { FormDraft } from "../draft/form-draft";
import { field } from "./student-form";

/** What a form that records an event begins with. */
export interface EventFormSource {
  readonly alias: string;
  readonly kind: EventKind;
  readonly today: string;
  /** The event that this one stands in for; null: a new one. */
  readonly instead: FiledEvent | null;
  /** Height on that event's day, as typed; empty: none. */
  readonly heightCm: string;
  readonly draft: FormDraft | null;
}

function fieldsOf(words: Words, source: EventFormSource): readonly FieldModel[] {
  const { instead, kind } = source;
  // Words belong to their kind: a new reader's name is no note, and of pain there are none.
  const same = instead?.kind === kind ? instead : null;
  const one = (spec: Parameters<typeof field>[3]) => field(words, source.draft, "event-form", spec);
  const extra: Readonly<Record<string, () => FieldModel>> = {
    endDay: () => one({ name: "endDay", kind: "date", value: instead?.endDay ?? "" }),
    heightCm: () => one({ name: "heightCm", kind: "number", value: source.heightCm }),
    note: () => one({ name: "note", kind: "text", value: same?.note ?? "" }),
    reader: () => one({ name: "reader", kind: "text", required: "yes", value: same?.note ?? "" }),
    place: () =>
      one({
        name: "place",
        kind: "radio",
        required: "yes",
        value: same?.place ?? "",
        options: PAIN_PLACES.map((place) => ({ value: place, label: words.say(`happen.place.${place}`) })),
      }),
  };
  const day = one({ name: "day", kind: "date", required: "yes", value: instead?.day ?? source.today });
  return [day, ...EVENT_FIELDS[kind].flatMap((name) => extra[name]?.() ?? [])];
}

/** The form of one kind of event, or of the one that stands in for a wrong one. */
export function buildEventForm(words: Words, source: EventFormSource): FormModel {
  const { alias, kind, instead, draft } = source;
  const kindWord = words.say(`event.${kind}`);
  return {
    heading: words.say("event-form.heading", { alias }),
    explains: words.say(instead === null ? "event-form.explains" : "event-form.explains.instead", { kind: kindWord }),
    parts: [{ margin: kindWord, explains: words.say(`event-form.${kind}.explains`), fields: fieldsOf(words, source) }],
    grid: null,
    submit: words.say(instead === null ? "event-form.submit" : "event-form.submit.instead"),
    refusal: draft?.refusal ?? "",
    hidden: [{ name: "kind", value: kind }, ...(instead === null ? [] : [{ name: "instead", value: instead.id }])],
  };
}

/** A button that takes something back, or puts it back, with what that does. */
export function buildBackForm(
  words: Words,
  what: "event" | "drill",
  state: "stands" | "taken-back",
  hidden: FormModel["hidden"],
): FormModel {
  const wish = state === "stands" ? "take" : "put";
  return {
    heading: words.say(`happen.${wish}-back.${what}`),
    explains: words.say(`happen.${wish}-back.${what}.explains`),
    parts: [],
    grid: null,
    submit: words.say(`happen.${wish}-back.${what}`),
    refusal: "",
    hidden: [...hidden, { name: "wish", value: wish }],
  };
}

/** The form that says which tracks begin anew at an event; each box says what ticking it does. */
export function buildRebaselineForm(words: Words, source: EventSource, draft: FormDraft | null): FormModel {
  const { event, student, tracks } = source;
  return {
    heading: words.say("event-form.part.anew"),
    explains: words.say("event-form.part.anew.explains"),
    parts: [
      {
        margin: words.say("event-form.part.anew"),
        explains: words.say(`happen.anew-advice.${event.kind}`),
        fields: [
          field(words, draft, "event-form", {
            name: "rebaselines",
            kind: "checkbox",
            value: event.rebaselines.join(","),
            options: tracks.map((track) => ({
              value: track.fundamental.id,
              label: sayAnew(words, event, track),
            })),
          }),
          field(words, draft, "event-form", { name: "why", kind: "text", required: "yes" }),
        ],
      },
    ],
    grid: null,
    submit: words.say("event-form.anew.submit"),
    refusal: draft?.refusal ?? "",
    hidden: [
      { name: "studentId", value: student.id },
      { name: "eventId", value: event.id },
    ],
  };
}
