import { requireDraftId } from "../../../../_server/draft/draft-forms";
import { requireStudent } from "../../../../_server/gate";
import { loadFrame } from "../../../../_server/load-frame";
import { type AskedPlan, loadPlan } from "../../../../_server/plan/load-plan";
import { Frame } from "../../../../_ui/frame/frame";
import { PlanPage } from "../../../../_ui/plan/plan-page";
import { pressReminded, submitPlan, submitPlanBack, workOutPlan } from "./actions";

interface Asked {
  readonly params: Promise<{ readonly studentId: string }>;
  readonly searchParams: Promise<AskedPlan>;
}

export async function generateMetadata({ params }: Asked) {
  const viewer = await requireStudent("/students/[studentId]/plan", (await params).studentId);
  return { title: (await loadPlan(viewer, {})).page.documentTitle };
}

export default async function PlanRoute({ params, searchParams }: Asked) {
  const viewer = await requireStudent("/students/[studentId]/plan", (await params).studentId);
  const { draft, dropped, club, told } = await searchParams;
  const draftId = requireDraftId(`/students/${viewer.student.studentId}/plan`, draft, dropped, { club, told });
  const { page, form } = await loadPlan(viewer, { draft: draftId, dropped, club, told });
  return (
    <Frame model={loadFrame(viewer)} current="students">
      <PlanPage
        model={page}
        form={form}
        actions={{ keep: submitPlan, workOut: workOutPlan, back: submitPlanBack, remind: pressReminded }}
      />
    </Frame>
  );
}
