import { loadConsent, loadConsentForm } from "../../../../_server/consent/load-consent";
import { type AskedForm, requireDraftId } from "../../../../_server/draft/draft-forms";
import { requireStudent } from "../../../../_server/gate";
import { loadFrame } from "../../../../_server/load-frame";
import { AskingText } from "../../../../_ui/consent/asking-text";
import { Frame } from "../../../../_ui/frame/frame";
import { HappenPage } from "../../../../_ui/happen/happen-page";
import { PartForm } from "../../../../_ui/happen/part-form";
import { TextPart } from "../../../../_ui/text-page/text-page";
import { submitConsent } from "./actions";

interface Asked {
  readonly params: Promise<{ readonly studentId: string }>;
  readonly searchParams: Promise<AskedForm>;
}

export async function generateMetadata({ params }: Asked) {
  const viewer = await requireStudent("/students/[studentId]/consent", (await params).studentId);
  return { title: loadConsent(viewer).documentTitle };
}

export default async function ConsentRoute({ params, searchParams }: Asked) {
  const viewer = await requireStudent("/students/[studentId]/consent", (await params).studentId);
  const { draft, dropped } = await searchParams;
  const draftId = requireDraftId(`/students/${viewer.student.studentId}/consent`, draft, dropped);
  const model = loadConsent(viewer);
  return (
    <Frame model={loadFrame(viewer)} current="students">
      <HappenPage model={model}>
        <PartForm model={loadConsentForm(viewer, { draftId, dropped })} action={submitConsent} />
        <AskingText model={model.message} />
        <TextPart part={model.links} />
      </HappenPage>
    </Frame>
  );
}
