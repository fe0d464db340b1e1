import { requireViewer } from "../../_server/gate";
import { loadFrame } from "../../_server/load-frame";
import { loadRoster } from "../../_server/roster/load-roster";
import { Frame } from "../../_ui/frame/frame";
import { Roster } from "../../_ui/roster/roster";
import { pressSeen } from "./actions";

interface Asked {
  readonly searchParams: Promise<{ readonly sort?: string; readonly page?: string }>;
}

export default async function RosterRoute({ searchParams }: Asked) {
  const viewer = await requireViewer("/students");
  const { sort, page } = await searchParams;
  const model = await loadRoster(viewer, { sort, page });
  return (
    <Frame model={loadFrame(viewer)} current="students">
      <Roster model={model} seenAction={pressSeen} />
    </Frame>
  );
}
