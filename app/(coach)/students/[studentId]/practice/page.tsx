import { type AskedForm, requireDraftId } from "../../../../_server/draft/draft-forms";
import { requireStudent } from "../../../../_server/gate";
import { loadFrame } from "../../../../_server/load-frame";
import { loadPractice } from "../../../../_server/season/practice-desk";
import { Frame } from "../../../../_ui/frame/frame";
import { HappenPage } from "../../../../_ui/happen/happen-page";
import { PracticeForm } from "../../../../_ui/practice/practice-form";
import { submitPractice, submitPracticeBack } from "./actions";

interface Asked {
  readonly params: Promise<{ readonly studentId: string }>;
  readonly searchParams: Promise<AskedForm & { readonly week?: string }>;
}

export async function generateMetadata({ params }: Asked) {
  return {
    title: loadPractice(await requireStudent("/students/[studentId]/practice", (await params).studentId), {}).page
      .documentTitle,
  };
}

export default async function PracticeRoute({ params, searchParams }: Asked) {
  const viewer = await requireStudent("/students/[studentId]/practice", (await params).studentId);
  const { draft, dropped, week } = await searchParams;
  const draftId = requireDraftId(`/students/${viewer.student.studentId}/practice`, draft, dropped, { week });
  const { page, form } = loadPractice(viewer, { week, draft: draftId, dropped });
  return (
    <Frame model={loadFrame(viewer)} current="students">
      <HappenPage
        model={page}
        press={submitPracticeBack}
        before={<PracticeForm key={form.caption} model={form} action={submitPractice} />}
      />
    </Frame>
  );
}
