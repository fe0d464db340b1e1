import { requireViewer } from "../../_server/gate";
import { loadFrame } from "../../_server/load-frame";
import { loadPeople, type PeopleWish } from "../../_server/people/load-people";
import { Frame } from "../../_ui/frame/frame";
import { People } from "../../_ui/people/people";
import { revokeInvitation, sendInvitation } from "./actions";

interface Asked {
  readonly searchParams: Promise<PeopleWish>;
}

const ACTIONS = { revoke: revokeInvitation, mail: sendInvitation };

export default async function PeopleRoute({ searchParams }: Asked) {
  const viewer = await requireViewer("/people");
  return (
    <Frame model={loadFrame(viewer)} current="people">
      <People model={loadPeople(viewer, await searchParams)} actions={ACTIONS} />
    </Frame>
  );
}
