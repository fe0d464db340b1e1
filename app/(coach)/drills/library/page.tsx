import { type AskedForm, requireDraftId } from "../../../_server/draft/draft-forms";
import { loadLibrary, loadLibraryForm } from "../../../_server/drill/library-desk";
import { requireViewer } from "../../../_server/gate";
import { loadFrame } from "../../../_server/load-frame";
import { Frame } from "../../../_ui/frame/frame";
import { HappenPage } from "../../../_ui/happen/happen-page";
import { PartForm } from "../../../_ui/happen/part-form";
import { submitLibraryDrill } from "./actions";

interface Asked {
  readonly searchParams: Promise<AskedForm>;
}

export async function generateMetadata() {
  return { title: loadLibrary(await requireViewer("/drills/library")).documentTitle };
}

export default async function LibraryRoute({ searchParams }: Asked) {
  const viewer = await requireViewer("/drills/library");
  const { draft, dropped } = await searchParams;
  const form = loadLibraryForm(viewer, null, requireDraftId("/drills/library", draft, dropped), dropped);
  return (
    <Frame model={loadFrame(viewer)} current="academy">
      <HappenPage model={loadLibrary(viewer)}>
        {form === null ? null : <PartForm model={form} action={submitLibraryDrill} />}
      </HappenPage>
    </Frame>
  );
}
