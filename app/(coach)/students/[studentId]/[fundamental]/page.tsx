import { requireStudent } from "../../../../_server/gate";
import { loadFrame } from "../../../../_server/load-frame";
import { loadFundamental } from "../../../../_server/season/load-fundamental";
import { Frame } from "../../../../_ui/frame/frame";
import { Fundamental } from "../../../../_ui/fundamental/fundamental";
import { submitAsking } from "./actions";

interface Asked {
  readonly params: Promise<{ readonly studentId: string; readonly fundamental: string }>;
  readonly searchParams: Promise<{ readonly club?: string }>;
}

export async function generateMetadata({ params, searchParams }: Asked) {
  const { studentId, fundamental } = await params;
  const viewer = await requireStudent("/students/[studentId]/[fundamental]", studentId);
  return { title: (await loadFundamental(viewer, fundamental, (await searchParams).club)).documentTitle };
}

export default async function FundamentalRoute({ params, searchParams }: Asked) {
  const { studentId, fundamental } = await params;
  const viewer = await requireStudent("/students/[studentId]/[fundamental]", studentId);
  const model = await loadFundamental(viewer, fundamental, (await searchParams).club);
  return (
    <Frame model={loadFrame(viewer)} current="students">
      <Fundamental model={model} words={loadFrame(viewer).chartWords} askAction={submitAsking} />
    </Frame>
  );
}
