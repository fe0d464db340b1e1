import { type AskedForm, requireDraftId } from "../../../_server/draft/draft-forms";
import { requireViewer } from "../../../_server/gate";
import { loadFrame } from "../../../_server/load-frame";
import { loadWishForm } from "../../../_server/reread/load-rereads";
import { Form } from "../../../_ui/form/form";
import { Frame } from "../../../_ui/frame/frame";
import { TextPage } from "../../../_ui/text-page/text-page";
import { submitWish } from "./actions";

interface Asked {
  readonly searchParams: Promise<AskedForm>;
}

export default async function NewRereadRoute({ searchParams }: Asked) {
  const viewer = await requireViewer("/rereads/new");
  const { draft, dropped } = await searchParams;
  const wish = loadWishForm(viewer, { draft: requireDraftId("/rereads/new", draft, dropped), dropped });
  return (
    <Frame model={loadFrame(viewer)} current="settings">
      {wish.kind === "form" ? <Form model={wish.form} action={submitWish} /> : <TextPage model={wish.page} />}
    </Frame>
  );
}
