import { type ErasedWish, loadErased } from "../../../_server/erase/erase-desk";
import { requireViewer } from "../../../_server/gate";
import { loadFrame } from "../../../_server/load-frame";
import { Frame } from "../../../_ui/frame/frame";
import { People } from "../../../_ui/people/people";

interface Asked {
  readonly searchParams: Promise<ErasedWish>;
}

export async function generateMetadata() {
  const viewer = await requireViewer("/students/erased");
  return { title: viewer.words.say("erased.title") };
}

export default async function ErasedRoute({ searchParams }: Asked) {
  const viewer = await requireViewer("/students/erased");
  return (
    <Frame model={loadFrame(viewer)} current="students">
      <People model={loadErased(viewer, await searchParams)} actions={{}} />
    </Frame>
  );
}
