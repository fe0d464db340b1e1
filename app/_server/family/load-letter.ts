import { OWN_LETTERS, parseLetterForm } from "@/lib/ingest/parse-letter-form";
import { letterText } from "@/lib/report/build-letter";
import { copyText } from "@/lib/report/build-plan";
import { refusedPart } from "@/lib/report/build-tell";
import type { FormModel } from "@/lib/report/form-model";
import type { LetterPage } from "@/lib/report/tell-model";
import { type TellPiece, tellPieces } from "@/lib/report/tell-pieces";
import { type FormDraft, findFormDraft } from "../draft/form-draft";
import { withKeep } from "../draft/with-keep";
import type { StudentViewer } from "../gate";
import { field } from "../season/student-form";
import { LETTER_FORM, letterDraft, piecesDigest, sheetOf } from "./letter-desk";
import { mayShare } from "./link-desk";
import { type LoadedTelling, loadTelling } from "./load-telling";

/** What the page of a letter is asked with. */
export interface AskedLetter {
  readonly draft?: string;
  readonly dropped?: string;
  readonly done?: string;
}

/** A letter as the form has it as far as it can be read; what can't be read stands as it is offered. */
function typedChoice(draft: FormDraft | null, pieces: readonly TellPiece[]) {
  const data = new FormData();
  for (const [name, value] of draft?.entries ?? []) data.append(name, value);
  const keys = pieces.map(({ key }) => key);
  const parsed = parseLetterForm(data, keys);
  return parsed.kind === "ok" ? parsed.value : { order: keys, own: "", place: "last" as const };
}

function letterForm(
  viewer: StudentViewer,
  loaded: LoadedTelling,
  pieces: readonly TellPiece[],
  draft: FormDraft | null,
): FormModel {
  const { words } = viewer;
  const say = (key: string, args = {}): string => words.say(`${LETTER_FORM}.${key}`, args);
  const one = (spec: Parameters<typeof field>[3]) => field(words, draft, LETTER_FORM, { hint: "", ...spec });
  const places = pieces.map((_, at) => ({
    value: String(at + 1),
    label: say("place.at", { place: at + 1 }),
  }));
  const out = { value: "", label: say("place.out") };
  return {
    heading: say("heading"),
    explains: say("explains"),
    parts: [
      {
        margin: say("heading"),
        explains: "",
        fields: [
          one({ name: "own", kind: "textarea", hint: say("own.hint", { limit: OWN_LETTERS }) }),
          one({
            name: "ownPlace",
            kind: "select",
            value: "last",
            options: (["first", "last"] as const).map((place) => ({ value: place, label: say(`ownPlace.${place}`) })),
          }),
          ...pieces.map(({ key, text, may }, at) =>
            one({
              name: `place.${key}`,
              kind: "select",
              label: say("place", { text }),
              value: String(at + 1),
              options: may === "leave" ? [out, ...places] : places,
            }),
          ),
        ],
        refresh: say("work-out"),
      },
    ],
    grid: null,
    submit: say("submit"),
    refusal: draft?.refusal ?? "",
    hidden: [{ name: "shown", value: piecesDigest(loaded) }],
  };
}

/** The page of a season letter, and the form in which it is changed and kept as told. */
export async function loadLetter(
  viewer: StudentViewer,
  asked: AskedLetter,
): Promise<{ readonly page: LetterPage; readonly form: FormModel | null }> {
  const { words, student } = viewer;
  const loaded = await loadTelling(viewer);
  const { alias, id } = loaded.telling.student;
  const may = mayShare(viewer);
  const draft = findFormDraft(viewer, letterDraft(student.studentId), asked.draft);
  const pieces = tellPieces(loaded.words, loaded.telling);
  const sheet = may ? sheetOf(viewer, loaded, typedChoice(draft, pieces)) : null;
  const notice = `tell.done.${asked.done ?? ""}`;
  const shown = { form: LETTER_FORM, studentId: student.studentId, dropped: asked.dropped };
  const form = may ? letterForm(viewer, loaded, pieces, draft) : null;
  return {
    page: {
      documentTitle: words.say("document-title", { page: words.say("letter") }),
      title: words.say("letter.title", { alias }),
      lede: words.say("letter.lede"),
      back: { href: `/students/${id}/tell`, label: words.say("letter.back", { alias }) },
      notices: words.has(notice) ? [words.say(notice)] : [],
      refused: may ? null : refusedPart(words, id),
      sheet,
      copy:
        sheet === null
          ? null
          : {
              margin: words.say("letter.margin.copy"),
              explains: words.say("letter.copy.explains"),
              message: {
                ...copyText(words, letterText(sheet), loaded.words),
                label: words.say("letter.copy.label"),
              },
            },
    },
    form:
      form === null || asked.draft === undefined ? form : withKeep(viewer, form, { ...shown, draftId: asked.draft }),
  };
}
