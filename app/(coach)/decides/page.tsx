import type { Metadata } from "next";
import { requireViewer } from "../../_server/gate";
import { loadFrame } from "../../_server/load-frame";
import { loadDecides } from "../../_server/season/load-decides";
import { Decides } from "../../_ui/decides/decides";
import { Frame } from "../../_ui/frame/frame";

export async function generateMetadata(): Promise<Metadata> {
  return { title: loadDecides(await requireViewer("/decides")).title };
}

export default async function DecidesRoute() {
  const viewer = await requireViewer("/decides");
  return (
    <Frame model={loadFrame(viewer)} current="decides">
      <Decides model={loadDecides(viewer)} />
    </Frame>
  );
}
