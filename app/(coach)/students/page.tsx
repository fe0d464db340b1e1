import { requireViewer } from "../../_server/gate";
import { loadFrame } from "../../_server/load-frame";
import { loadRoster } from "../../_server/roster/load-roster";
import { Frame } from "../../_ui/frame/frame";
import { Roster } from "../../_ui/roster/roster";
import { forgetView, keepView, pressDealtWith, pressSeen } from "./actions";

interface Asked {
  readonly searchParams: Promise<Readonly<Record<string, string | string[] | undefined>>>;
}

export default async function RosterRoute({ searchParams }: Asked) {
  const viewer = await requireViewer("/students");
  const model = await loadRoster(viewer, await searchParams);
  const views = { keep: keepView, forget: forgetView };
  return (
    <Frame model={loadFrame(viewer)} current="students">
      <Roster model={model} seenAction={pressSeen} dealtAction={pressDealtWith} viewActions={views} />
    </Frame>
  );
}
