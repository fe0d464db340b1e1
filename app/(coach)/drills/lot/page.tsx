import { requireDraftId } from "../../../_server/draft/draft-forms";
import { fairTestsTitle, loadFairForm, loadFairTests } from "../../../_server/fair/load-fair-tests";
import { requireViewer } from "../../../_server/gate";
import { loadFrame } from "../../../_server/load-frame";
import { loadRules } from "../../../_server/roster/load-verdicts";
import { FairTests } from "../../../_ui/fair/fair-tests";
import { Frame } from "../../../_ui/frame/frame";
import { PartForm } from "../../../_ui/happen/part-form";
import { submitFairStep, submitFairTest, workOutFairTest } from "./actions";

interface Asked {
  readonly searchParams: Promise<{ readonly draft?: string; readonly dropped?: string; readonly done?: string }>;
}

export async function generateMetadata() {
  return { title: fairTestsTitle(await requireViewer("/drills/lot")) };
}

export default async function FairTestsRoute({ searchParams }: Asked) {
  const viewer = await requireViewer("/drills/lot");
  const { draft, dropped, done } = await searchParams;
  const draftId = requireDraftId("/drills/lot", draft, dropped, { done });
  // What a test counts is what is judged as of now.
  await loadRules(viewer);
  return (
    <Frame model={loadFrame(viewer)} current="academy">
      <FairTests model={loadFairTests(viewer, done)} step={submitFairStep}>
        <PartForm model={loadFairForm(viewer, draftId, dropped)} action={submitFairTest} refresh={workOutFairTest} />
      </FairTests>
    </Frame>
  );
}
