import { loadReport } from "../../../../_server/archive/load-report";
import { requireStudent } from "../../../../_server/gate";
import { loadFrame } from "../../../../_server/load-frame";
import { Frame } from "../../../../_ui/frame/frame";
import { Report } from "../../../../_ui/report/report";

interface Asked {
  readonly params: Promise<{ readonly studentId: string }>;
  readonly searchParams: Promise<{ readonly club?: string }>;
}

export async function generateMetadata({ params }: Asked) {
  const viewer = await requireStudent("/students/[studentId]/report", (await params).studentId);
  return { title: viewer.words.say("report.document") };
}

export default async function ReportRoute({ params, searchParams }: Asked) {
  const viewer = await requireStudent("/students/[studentId]/report", (await params).studentId);
  const model = await loadReport(viewer, (await searchParams).club);
  return (
    <Frame model={loadFrame(viewer)} current="students">
      <Report model={model} />
    </Frame>
  );
}
