import { type AskedForm, requireDraftId } from "../../../../_server/draft/draft-forms";
import { requireStudent } from "../../../../_server/gate";
import { loadGoals, loadGoalsPage } from "../../../../_server/goals/goal-desk";
import type { AskedGoal } from "../../../../_server/goals/goal-source";
import { loadFrame } from "../../../../_server/load-frame";
import { Frame } from "../../../../_ui/frame/frame";
import { Goals } from "../../../../_ui/goals/goals";
import { submitGoal } from "./actions";

interface Asked {
  readonly params: Promise<{ readonly studentId: string }>;
  readonly searchParams: Promise<AskedGoal & AskedForm>;
}

export async function generateMetadata({ params, searchParams }: Asked) {
  const viewer = await requireStudent("/students/[studentId]/goals", (await params).studentId);
  return { title: (await loadGoalsPage(viewer, await searchParams)).documentTitle };
}

export default async function GoalsRoute({ params, searchParams }: Asked) {
  const viewer = await requireStudent("/students/[studentId]/goals", (await params).studentId);
  const { draft, dropped, fundamental, club } = await searchParams;
  const page = `/students/${viewer.student.studentId}/goals`;
  const draftId = requireDraftId(page, draft, dropped, { fundamental, club });
  const room = await loadGoals(viewer, { fundamental, club, draft: draftId, dropped });
  return (
    <Frame model={loadFrame(viewer)} current="students">
      <Goals {...room} action={submitGoal} />
    </Frame>
  );
}
