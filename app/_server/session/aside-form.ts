import type { FiledCapture } from "@/db/read/sessions";
import type { Session } from "@/lib/domain/session";
import { type AsidePart, asideChoice } from "@/lib/ingest/parse-aside-form";
import type { FieldModel, FormModel } from "@/lib/report/form-model";
import type { Words } from "@/lib/words/catalogue";
import { sayDay } from "@/lib/words/day-words";
import type { FormDraft } from "../draft/form-draft";
import { field } from "../season/student-form";

/** Why a session or one of its films was set aside; null: it counts; undefined: there is no such film. */
export function asideReasonOf(
  session: Session,
  films: readonly FiledCapture[],
  part: AsidePart,
): string | null | undefined {
  if (part === "session") return session.setAsideReason;
  return films.find((film) => film.view === part)?.setAsideReason;
}

/** The form that sets a session or one of its films aside with a reason, or brings it back with one. */
export function buildAsideForm(
  words: Words,
  source: {
    readonly session: Session;
    readonly films: readonly FiledCapture[];
    readonly alias: string;
    readonly who: string;
    readonly draft: FormDraft | null;
    readonly hidden: FormModel["hidden"];
  },
): FormModel {
  const { session, films, draft } = source;
  const parts: readonly AsidePart[] = ["session", ...films.map((film) => film.view)];
  const options = parts.map((part) => {
    const reason = asideReasonOf(session, films, part) ?? null;
    const way = reason === null ? "aside" : "back";
    const what = words.say(part === "session" ? "aside.session" : "aside.film", {
      view: part === "session" ? "" : words.say(`view.${part}`),
    });
    return {
      value: asideChoice(way, part),
      label: words.say(way === "aside" ? "aside.aside" : "aside.back.what", { what, reason: reason ?? "" }),
    };
  });
  // What is set aside already is what somebody comes to bring back.
  const standing = options.find(({ value }) => value.startsWith("back:")) ?? options[0];
  const one = (spec: Parameters<typeof field>[3]): FieldModel => field(words, draft, "aside", spec);
  return {
    heading: words.say("aside.heading", { alias: source.alias, day: sayDay(words, session.day, "full") }),
    explains: words.say("aside.explains"),
    parts: [
      {
        margin: words.say("aside.part"),
        explains: words.say("aside.part.explains", { who: source.who }),
        fields: [
          one({ name: "what", kind: "radio", required: "yes", options, value: standing?.value ?? "" }),
          one({ name: "why", kind: "text", required: "yes" }),
        ],
      },
    ],
    grid: null,
    submit: words.say("aside.submit"),
    refusal: draft?.refusal ?? "",
    hidden: source.hidden,
  };
}
