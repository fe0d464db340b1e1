import { requireStudent } from "../../../_server/gate";
import { loadFrame } from "../../../_server/load-frame";
import { loadSeason } from "../../../_server/season/load-season";
import { Frame } from "../../../_ui/frame/frame";
import { Season } from "../../../_ui/season/season";

interface Asked {
  readonly params: Promise<{ readonly studentId: string }>;
  readonly searchParams: Promise<{ readonly club?: string }>;
}

export async function generateMetadata({ params, searchParams }: Asked) {
  const viewer = await requireStudent("/students/[studentId]", (await params).studentId);
  return { title: (await loadSeason(viewer, (await searchParams).club)).documentTitle };
}

export default async function SeasonRoute({ params, searchParams }: Asked) {
  const viewer = await requireStudent("/students/[studentId]", (await params).studentId);
  const model = await loadSeason(viewer, (await searchParams).club);
  return (
    <Frame model={loadFrame(viewer)} current="students">
      <Season model={model} />
    </Frame>
  );
}
