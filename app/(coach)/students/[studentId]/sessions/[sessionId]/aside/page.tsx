import { notFound } from "next/navigation";
import { type AskedForm, requireDraftId } from "../../../../../../_server/draft/draft-forms";
import { requireStudent } from "../../../../../../_server/gate";
import { loadFrame } from "../../../../../../_server/load-frame";
import { loadAsideForm } from "../../../../../../_server/session/aside-desk";
import { loadAsideRest } from "../../../../../../_server/session/load-set-aside";
import { Form } from "../../../../../../_ui/form/form";
import { Frame } from "../../../../../../_ui/frame/frame";
import { AsideRest } from "../../../../../../_ui/fundamental/aside-rest";
import { BackLink } from "../../../../../../_ui/part/back-link";
import { submitAside } from "./actions";

interface Asked {
  readonly params: Promise<{ readonly studentId: string; readonly sessionId: string }>;
  readonly searchParams: Promise<AskedForm & { readonly of?: string }>;
}

export default async function AsideRoute({ params, searchParams }: Asked) {
  const { studentId, sessionId } = await params;
  const viewer = await requireStudent("/students/[studentId]/sessions/[sessionId]/aside", studentId);
  const { draft, dropped, of } = await searchParams;
  const page = `/students/${viewer.student.studentId}/sessions/${encodeURIComponent(sessionId)}/aside`;
  const form = loadAsideForm(viewer, sessionId, requireDraftId(page, draft, dropped, { of }), { of, dropped });
  if (!form) notFound();
  const rest = await loadAsideRest(viewer, sessionId, of);
  return (
    <Frame model={loadFrame(viewer)} current="students">
      <Form model={form} action={submitAside} before={<BackLink link={rest.back} />} />
      <AsideRest model={rest} />
    </Frame>
  );
}
