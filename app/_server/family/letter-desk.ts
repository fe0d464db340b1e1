import { parseLetterForm } from "@/lib/ingest/parse-letter-form";
import { buildLetter, type LetterChoice, letterText } from "@/lib/report/build-letter";
import type { LetterSheet } from "@/lib/report/tell-model";
import { tellPieces } from "@/lib/report/tell-pieces";
import { kindOf } from "../draft/draft-forms";
import { keepFormDraft } from "../draft/form-draft";
import { sayFieldIssues } from "../draft/say-field-issues";
import { keepLooked, type Refused, submitOnce } from "../draft/submit-once";
import type { StudentViewer } from "../gate";
import { mayShare } from "./link-desk";
import { type LoadedTelling, loadTelling, shownDigest } from "./load-telling";
import { keepText } from "./tell-desk";

/** The form of this desk among those that are kept. */
export const LETTER_FORM = "letter-form";

/** The kind under which a letter's form is kept. */
export function letterDraft(studentId: string): string {
  return kindOf(LETTER_FORM, studentId);
}

/** A digest of the sentences that a letter is made from. */
export function piecesDigest({ words, telling }: LoadedTelling): string {
  return shownDigest(JSON.stringify(tellPieces(words, telling)));
}

/** A letter as it was chosen. */
export function sheetOf(viewer: StudentViewer, { words, telling }: LoadedTelling, choice: LetterChoice): LetterSheet {
  const from = { coach: viewer.name, academy: viewer.academy.name };
  return buildLetter(
    { page: viewer.words, family: words },
    { telling, pieces: tellPieces(words, telling) },
    choice,
    from,
  );
}

interface Kept {
  readonly kind: "kept" | "kept-before";
}

function refuse(
  viewer: StudentViewer,
  data: FormData,
  refusal: string,
  errors: Readonly<Record<string, string>> = {},
): Refused {
  const draftId = keepFormDraft(viewer, letterDraft(viewer.student.studentId), data, errors, refusal);
  return { kind: "refused", draftId };
}

function enterLetter(viewer: StudentViewer, data: FormData, loaded: LoadedTelling): Kept | Refused {
  const { words } = viewer;
  const parsed = parseLetterForm(
    data,
    tellPieces(loaded.words, loaded.telling).map(({ key }) => key),
  );
  if (parsed.kind === "issues")
    return refuse(viewer, data, words.say("letter-form.refusal"), sayFieldIssues(words, parsed.issues));
  if (String(data.get("shown") ?? "") !== piecesDigest(loaded))
    return refuse(viewer, data, words.say("letter-form.changed"));
  const sheet = sheetOf(viewer, loaded, parsed.value);
  if (sheet.paragraphs.length === 0 && sheet.own === null) return refuse(viewer, data, words.say("letter-form.empty"));
  return { kind: keepText(viewer, loaded, { kind: "letter", text: letterText(sheet) }) };
}

/** Keeps a letter as it was sent, once; a refused form is kept with what is wrong in it. */
export async function tellLetter(viewer: StudentViewer, data: FormData): Promise<Kept | Refused> {
  const kind = letterDraft(viewer.student.studentId);
  if (!mayShare(viewer))
    return submitOnce<Kept>(viewer, kind, data, () => refuse(viewer, data, viewer.words.say("letter-form.not-now")));
  const loaded = await loadTelling(viewer);
  return submitOnce<Kept>(viewer, kind, data, () => enterLetter(viewer, data, loaded));
}

/** Keeps the form as it stands, so that the page shows the letter that it makes; returns the draft's id. */
export function keepLetterForm(viewer: StudentViewer, data: FormData): string {
  return keepLooked(viewer, letterDraft(viewer.student.studentId), data);
}
