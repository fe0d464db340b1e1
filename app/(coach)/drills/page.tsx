import { type AskedComparison, comparedDrillsTitle, loadComparedDrills } from "../../_server/drill/load-compared";
import { requireViewer } from "../../_server/gate";
import { loadFrame } from "../../_server/load-frame";
import { ComparedDrills } from "../../_ui/compare/compared-drills";
import { Frame } from "../../_ui/frame/frame";

interface Asked {
  readonly searchParams: Promise<AskedComparison>;
}

export async function generateMetadata() {
  return { title: comparedDrillsTitle((await requireViewer("/drills")).words) };
}

export default async function DrillsRoute({ searchParams }: Asked) {
  const viewer = await requireViewer("/drills");
  return (
    <Frame model={loadFrame(viewer)} current="academy">
      <ComparedDrills model={await loadComparedDrills(viewer, await searchParams)} />
    </Frame>
  );
}
