import { type AskedForm, requireDraftId } from "../../../_server/draft/draft-forms";
import { requireViewer } from "../../../_server/gate";
import { loadGoals, loadGoalsPage } from "../../../_server/goals/goal-desk";
import type { AskedGoal } from "../../../_server/goals/goal-source";
import { loadFrame } from "../../../_server/load-frame";
import { Frame } from "../../../_ui/frame/frame";
import { Goals } from "../../../_ui/goals/goals";
import { submitAcademyGoal } from "./actions";

interface Asked {
  readonly searchParams: Promise<AskedGoal & AskedForm>;
}

export async function generateMetadata({ searchParams }: Asked) {
  const viewer = await requireViewer("/settings/goals");
  return { title: (await loadGoalsPage(viewer, await searchParams)).documentTitle };
}

export default async function AcademyGoalsRoute({ searchParams }: Asked) {
  const viewer = await requireViewer("/settings/goals");
  const { draft, dropped, fundamental, club } = await searchParams;
  const draftId = requireDraftId("/settings/goals", draft, dropped, { fundamental, club });
  const room = await loadGoals(viewer, { fundamental, club, draft: draftId, dropped });
  return (
    <Frame model={loadFrame(viewer)} current="settings">
      <Goals {...room} action={submitAcademyGoal} />
    </Frame>
  );
}
