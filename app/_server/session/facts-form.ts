import { type ClubGrouping, currentGroups } from "@/lib/domain/club-grouping";
import { VIEWS } from "@/lib/domain/fundamental";
import { CIRCUMSTANCES, type Session } from "@/lib/domain/session";
import type { FieldModel, FormModel } from "@/lib/report/form-model";
import type { Words } from "@/lib/words/catalogue";
import { sayDay } from "@/lib/words/day-words";
import { sayGroupOfClubs } from "@/lib/words/say-club";
import type { FormDraft } from "../draft/form-draft";
import { field } from "../season/student-form";
import { captureFields, sightingFields, sightingNames } from "./capture-fields";

type Spec = Parameters<typeof field>[3];

/** The fields that say when and how a session was filmed, with the words of a new session's form. */
export function whenFields(
  words: Words,
  draft: FormDraft | null,
  grouping: ClubGrouping,
): Readonly<Record<"day" | "clubGroup" | "club" | "circumstance" | "rest", readonly FieldModel[]>> {
  const one = (spec: Spec): FieldModel => field(words, draft, "session-form", spec);
  const groups = currentGroups(grouping).map((group) => ({ value: group.id, label: sayGroupOfClubs(words, group) }));
  const circumstances = CIRCUMSTANCES.map((value) => ({ value, label: words.say(`circumstance.${value}`) }));
  return {
    day: [one({ name: "day", kind: "date", required: "yes" })],
    clubGroup: [one({ name: "clubGroup", kind: "select", required: "yes", options: groups })],
    club: [one({ name: "club", kind: "text" })],
    circumstance: [
      one({ name: "circumstance", kind: "select", required: "yes", options: circumstances }),
      one({ name: "aid", kind: "text" }),
    ],
    rest: [
      one({ name: "daysSincePractice", kind: "number" }),
      one({ name: "solid", kind: "number" }),
      one({ name: "balls", kind: "number" }),
      one({ name: "note", kind: "textarea" }),
    ],
  };
}

/** The form that says the facts of a session anew; `draft` holds them as they stand, or what was typed. */
export function buildFactsForm(
  words: Words,
  source: {
    readonly session: Session;
    readonly alias: string;
    readonly grouping: ClubGrouping;
    readonly draft: FormDraft;
    /** Names of everybody who has read a film. */
    readonly readers: readonly string[];
    readonly hidden: FormModel["hidden"];
  },
): FormModel {
  const { draft, session } = source;
  const when = whenFields(words, draft, source.grouping);
  const film = (spec: Spec): FieldModel => field(words, draft, "session-form", spec);
  const own = (spec: Spec): FieldModel => field(words, draft, "facts", spec);
  return {
    heading: words.say("facts.heading", { alias: source.alias, day: sayDay(words, session.day, "full") }),
    explains: words.say("facts.explains"),
    parts: [
      {
        margin: words.say("correct.part.why"),
        explains: words.say("facts.part.why.explains"),
        fields: [own({ name: "why", kind: "text", required: "yes" })],
      },
      {
        margin: words.say("session-form.part.when"),
        explains: words.say("session-form.part.when.explains"),
        fields: [...when.day, ...when.clubGroup, ...when.club, ...when.circumstance, ...when.rest],
      },
      {
        margin: words.say("facts.part.reader"),
        explains: words.say("facts.part.reader.explains"),
        fields: [
          own({
            name: "reader",
            kind: "text",
            required: "yes",
            hint: words.say("facts.reader.hint", { names: source.readers.join(", ") }),
          }),
        ],
      },
      {
        margin: words.say("facts.part.aside"),
        explains: words.say("facts.part.aside.explains"),
        fields: [own({ name: "setAside", kind: "text" })],
      },
      ...VIEWS.map((view) => {
        const names = sightingNames(view);
        const isOpen = draft.entries.some(([name, value]) => names.includes(name) && value !== "");
        return {
          margin: words.say("session-form.part.film", { view: words.say(`view.${view}`) }),
          explains: words.say("session-form.part.film.explains"),
          fields: [
            ...captureFields(words, view, film),
            own({
              name: `aside.${view}`,
              kind: "text",
              label: words.say("facts.aside"),
              hint: words.say("facts.aside.hint"),
            }),
          ],
          more: {
            summary: words.say("capture.summary"),
            fields: sightingFields(words, view, film),
            open: isOpen ? ("yes" as const) : ("no" as const),
          },
        };
      }),
    ],
    grid: null,
    submit: words.say("facts.submit"),
    refusal: draft.refusal,
    hidden: source.hidden,
  };
}
