import { notFound } from "next/navigation";
import { type AskedForm, requireDraftId } from "../../../_server/draft/draft-forms";
import { requireViewer } from "../../../_server/gate";
import { loadFrame } from "../../../_server/load-frame";
import { loadDraw } from "../../../_server/reread/load-rereads";
import { Form } from "../../../_ui/form/form";
import { Frame } from "../../../_ui/frame/frame";
import { SecondReader } from "../../../_ui/rereads/second-reader";
import { TextPage } from "../../../_ui/text-page/text-page";
import { submitRereads, submitSecond } from "./actions";

interface Asked {
  readonly params: Promise<{ readonly drawId: string }>;
  readonly searchParams: Promise<AskedForm>;
}

export default async function RereadDrawRoute({ params, searchParams }: Asked) {
  const viewer = await requireViewer("/rereads/[drawId]");
  const { drawId } = await params;
  const { draft, dropped } = await searchParams;
  const draftId = requireDraftId(`/rereads/${encodeURIComponent(drawId)}`, draft, dropped);
  const page = loadDraw(viewer, drawId, { draft: draftId, dropped });
  if (!page) notFound();
  return (
    <Frame model={loadFrame(viewer)} current="settings">
      {page.kind === "open" ? (
        <Form model={page.form} action={submitRereads} />
      ) : (
        <>
          <TextPage model={page.page} />
          <SecondReader model={page.second} action={submitSecond} />
        </>
      )}
    </Frame>
  );
}
