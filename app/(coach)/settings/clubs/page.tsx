import { requireViewer } from "../../../_server/gate";
import { loadFrame } from "../../../_server/load-frame";
import { loadClubsPage } from "../../../_server/settings/club-desk";
import { Clubs } from "../../../_ui/clubs/clubs";
import { Frame } from "../../../_ui/frame/frame";

export default async function ClubsRoute() {
  const viewer = await requireViewer("/settings/clubs");
  return (
    <Frame model={loadFrame(viewer)} current="settings">
      <Clubs model={loadClubsPage(viewer)} />
    </Frame>
  );
}
