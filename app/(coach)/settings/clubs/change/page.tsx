import { type ClubWish, loadClubForm } from "../../../../_server/club-desk";
import { requireViewer } from "../../../../_server/gate";
import { loadFrame } from "../../../../_server/load-frame";
import { Form } from "../../../../_ui/form/form";
import { Frame } from "../../../../_ui/frame/frame";
import { submitClubs } from "./actions";

interface Asked {
  readonly searchParams: Promise<ClubWish>;
}

export default async function ChangeClubsRoute({ searchParams }: Asked) {
  const viewer = await requireViewer();
  return (
    <Frame model={loadFrame(viewer)} current="settings">
      <Form model={loadClubForm(viewer, await searchParams)} action={submitClubs} />
    </Frame>
  );
}
