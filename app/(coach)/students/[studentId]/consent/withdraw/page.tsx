import { loadWithdrawal } from "../../../../../_server/consent/load-consent";
import { type AskedForm, requireDraftId } from "../../../../../_server/draft/draft-forms";
import { requireStudent } from "../../../../../_server/gate";
import { loadFrame } from "../../../../../_server/load-frame";
import { Form } from "../../../../../_ui/form/form";
import { Frame } from "../../../../../_ui/frame/frame";
import { BackLink } from "../../../../../_ui/part/back-link";
import { submitWithdrawal } from "./actions";

interface Asked {
  readonly params: Promise<{ readonly studentId: string }>;
  readonly searchParams: Promise<AskedForm>;
}

export default async function WithdrawalRoute({ params, searchParams }: Asked) {
  const viewer = await requireStudent("/students/[studentId]/consent/withdraw", (await params).studentId);
  const { draft, dropped } = await searchParams;
  const draftId = requireDraftId(`/students/${viewer.student.studentId}/consent/withdraw`, draft, dropped);
  const { form, back } = loadWithdrawal(viewer, { draftId, dropped });
  return (
    <Frame model={loadFrame(viewer)} current="students">
      <Form model={form} action={submitWithdrawal} before={<BackLink link={back} />} />
    </Frame>
  );
}
