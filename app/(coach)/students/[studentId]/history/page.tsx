import { requireStudent } from "../../../../_server/gate";
import { loadFrame } from "../../../../_server/load-frame";
import { loadHistory } from "../../../../_server/session/load-history";
import { Frame } from "../../../../_ui/frame/frame";
import { RecordPage } from "../../../../_ui/record-page/record-page";
import { submitUndo } from "./actions";

interface Asked {
  readonly params: Promise<{ readonly studentId: string }>;
  readonly searchParams: Promise<{ readonly told?: string }>;
}

export async function generateMetadata({ params }: Asked) {
  return {
    title: loadHistory(await requireStudent("/students/[studentId]/history", (await params).studentId), undefined)
      .documentTitle,
  };
}

export default async function HistoryRoute({ params, searchParams }: Asked) {
  const viewer = await requireStudent("/students/[studentId]/history", (await params).studentId);
  return (
    <Frame model={loadFrame(viewer)} current="students">
      <RecordPage model={loadHistory(viewer, (await searchParams).told)} action={submitUndo} />
    </Frame>
  );
}
