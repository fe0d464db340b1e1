import { requireStudent } from "../../../../_server/gate";
import { loadFrame } from "../../../../_server/load-frame";
import { type KnownWish, loadKnown } from "../../../../_server/season/load-known";
import { Frame } from "../../../../_ui/frame/frame";
import { RecordPage } from "../../../../_ui/record-page/record-page";

interface Asked {
  readonly params: Promise<{ readonly studentId: string }>;
  readonly searchParams: Promise<KnownWish>;
}

export async function generateMetadata({ params }: Asked) {
  const { words } = await requireStudent("/students/[studentId]/known", (await params).studentId);
  return { title: words.say("document-title", { page: words.say("known.document-title") }) };
}

export default async function KnownRoute({ params, searchParams }: Asked) {
  const viewer = await requireStudent("/students/[studentId]/known", (await params).studentId);
  return (
    <Frame model={loadFrame(viewer)} current="students">
      <RecordPage model={await loadKnown(viewer, await searchParams)} action="" />
    </Frame>
  );
}
