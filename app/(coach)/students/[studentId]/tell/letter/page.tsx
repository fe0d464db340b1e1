import { requireDraftId } from "../../../../../_server/draft/draft-forms";
import { type AskedLetter, loadLetter } from "../../../../../_server/family/load-letter";
import { requireStudent } from "../../../../../_server/gate";
import { loadFrame } from "../../../../../_server/load-frame";
import { Frame } from "../../../../../_ui/frame/frame";
import { Letter } from "../../../../../_ui/tell/letter";
import { submitLetter, workOutLetter } from "./actions";

interface Asked {
  readonly params: Promise<{ readonly studentId: string }>;
  readonly searchParams: Promise<AskedLetter>;
}

export async function generateMetadata({ params }: Asked) {
  const { words } = await requireStudent("/students/[studentId]/tell/letter", (await params).studentId);
  return { title: words.say("document-title", { page: words.say("letter") }) };
}

export default async function LetterRoute({ params, searchParams }: Asked) {
  const viewer = await requireStudent("/students/[studentId]/tell/letter", (await params).studentId);
  const { draft, dropped } = await searchParams;
  const draftId = requireDraftId(`/students/${viewer.student.studentId}/tell/letter`, draft, dropped);
  const { page, form } = await loadLetter(viewer, { draft: draftId, dropped });
  return (
    <Frame model={loadFrame(viewer)} current="students">
      <Letter model={page} form={form} actions={{ keep: submitLetter, workOut: workOutLetter }} />
    </Frame>
  );
}
