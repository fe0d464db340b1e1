import { notFound } from "next/navigation";
import { drillSeasonsTitle, loadDrillSeasons } from "../../../_server/drill/load-drill-seasons";
import { requireViewer } from "../../../_server/gate";
import { loadFrame } from "../../../_server/load-frame";
import { DrillSeasons } from "../../../_ui/drill-seasons/drill-seasons";
import { Frame } from "../../../_ui/frame/frame";

interface Asked {
  readonly params: Promise<{ readonly drillId: string }>;
  readonly searchParams: Promise<{ readonly club?: string }>;
}

export async function generateMetadata() {
  return { title: drillSeasonsTitle(await requireViewer("/drills/[drillId]")) };
}

export default async function DrillSeasonsRoute({ params, searchParams }: Asked) {
  const viewer = await requireViewer("/drills/[drillId]");
  const model = await loadDrillSeasons(viewer, (await params).drillId, (await searchParams).club);
  if (model === null) notFound();
  return (
    <Frame model={loadFrame(viewer)} current="academy">
      <DrillSeasons model={model} />
    </Frame>
  );
}
