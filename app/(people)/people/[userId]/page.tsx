import { requireViewer } from "../../../_server/gate";
import { loadFrame } from "../../../_server/load-frame";
import { type ColleagueWish, loadColleague } from "../../../_server/people/load-colleague";
import { Frame } from "../../../_ui/frame/frame";
import { People } from "../../../_ui/people/people";
import { endColleague, makeColleagueLink, sendColleagueLink, submitRoles } from "./actions";

interface Asked {
  readonly params: Promise<{ readonly userId: string }>;
  readonly searchParams: Promise<ColleagueWish>;
}

const ACTIONS = { roles: submitRoles, password: makeColleagueLink, mail: sendColleagueLink, end: endColleague };

export default async function ColleagueRoute({ params, searchParams }: Asked) {
  const viewer = await requireViewer("/people/[userId]");
  const { userId } = await params;
  const model = loadColleague(viewer, decodeURIComponent(userId), await searchParams);
  return (
    <Frame model={loadFrame(viewer)} current="people">
      <People model={model} actions={ACTIONS} />
    </Frame>
  );
}
