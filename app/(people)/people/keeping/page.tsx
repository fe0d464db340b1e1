import { requireViewer } from "../../../_server/gate";
import { type KeepingWish, loadKeeping } from "../../../_server/keeping/load-keeping";
import { loadFrame } from "../../../_server/load-frame";
import { Frame } from "../../../_ui/frame/frame";
import { People } from "../../../_ui/people/people";
import { submitClock, submitHold, submitRelease } from "./actions";

interface Asked {
  readonly searchParams: Promise<KeepingWish>;
}

const ACTIONS = { hold: submitHold, release: submitRelease, settle: submitClock };

export async function generateMetadata() {
  const viewer = await requireViewer("/people/keeping");
  return { title: viewer.words.say("keeping.title") };
}

export default async function KeepingRoute({ searchParams }: Asked) {
  const viewer = await requireViewer("/people/keeping");
  return (
    <Frame model={loadFrame(viewer)} current="people">
      <People model={loadKeeping(viewer, await searchParams)} actions={ACTIONS} />
    </Frame>
  );
}
