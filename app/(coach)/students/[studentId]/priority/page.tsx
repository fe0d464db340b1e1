import { requireDraftId } from "../../../../_server/draft/draft-forms";
import { requireStudent } from "../../../../_server/gate";
import { loadFrame } from "../../../../_server/load-frame";
import { type AskedPriority, loadPriority } from "../../../../_server/season/load-priority";
import { Frame } from "../../../../_ui/frame/frame";
import { HappenPage } from "../../../../_ui/happen/happen-page";
import { PartForm } from "../../../../_ui/happen/part-form";
import { submitPriority } from "./actions";

interface Asked {
  readonly params: Promise<{ readonly studentId: string }>;
  readonly searchParams: Promise<AskedPriority>;
}

export async function generateMetadata({ params }: Asked) {
  const viewer = await requireStudent("/students/[studentId]/priority", (await params).studentId);
  return { title: (await loadPriority(viewer, {})).page.documentTitle };
}

export default async function PriorityRoute({ params, searchParams }: Asked) {
  const viewer = await requireStudent("/students/[studentId]/priority", (await params).studentId);
  const { draft, dropped, club } = await searchParams;
  const here = `/students/${viewer.student.studentId}/priority`;
  const draftId = requireDraftId(here, draft, dropped, { club });
  const { page, form } = await loadPriority(viewer, { draft: draftId, dropped, club });
  return (
    <Frame model={loadFrame(viewer)} current="students">
      <HappenPage
        model={page}
        before={form === null ? undefined : <PartForm key={draftId} model={form} action={submitPriority} />}
      />
    </Frame>
  );
}
