import { redirect } from "next/navigation";
import { requireDraftId } from "../../../../_server/draft/draft-forms";
import { requireViewer } from "../../../../_server/gate";
import { loadFrame } from "../../../../_server/load-frame";
import { type ClubWish, loadClubForm } from "../../../../_server/settings/club-desk";
import { Form } from "../../../../_ui/form/form";
import { Frame } from "../../../../_ui/frame/frame";
import { submitClubs } from "./actions";

interface Asked {
  readonly searchParams: Promise<ClubWish>;
}

export default async function ChangeClubsRoute({ searchParams }: Asked) {
  const viewer = await requireViewer("/settings/clubs/change");
  const { change, group, draft, dropped } = await searchParams;
  const draftId = requireDraftId("/settings/clubs/change", draft, dropped, { change, group });
  const form = loadClubForm(viewer, { change, group, draft: draftId, dropped });
  if (!form) redirect("/settings/clubs");
  return (
    <Frame model={loadFrame(viewer)} current="settings">
      <Form model={form} action={submitClubs} />
    </Frame>
  );
}
