import { notFound } from "next/navigation";
import { requireViewer } from "../../../../_server/gate";
import { loadFrame } from "../../../../_server/load-frame";
import { loadReaderError } from "../../../../_server/reread/load-rereads";
import { Frame } from "../../../../_ui/frame/frame";
import { ReaderError } from "../../../../_ui/rereads/reader-error";

interface Asked {
  readonly params: Promise<{ readonly fundamental: string }>;
}

export default async function ReaderErrorRoute({ params }: Asked) {
  const viewer = await requireViewer("/rereads/of/[fundamental]");
  const page = loadReaderError(viewer, (await params).fundamental);
  if (!page) notFound();
  return (
    <Frame model={loadFrame(viewer)} current="settings">
      <ReaderError model={page} />
    </Frame>
  );
}
