import { requireViewer } from "../../../_server/gate";
import { type KeysWish, loadKeys } from "../../../_server/import/load-keys";
import { loadFrame } from "../../../_server/load-frame";
import { Frame } from "../../../_ui/frame/frame";
import { Keys } from "../../../_ui/keys/keys";
import { makeAccessKey, revokeAccessKey } from "./actions";

interface Asked {
  readonly searchParams: Promise<KeysWish>;
}

export default async function KeysRoute({ searchParams }: Asked) {
  const viewer = await requireViewer();
  return (
    <Frame model={loadFrame(viewer)} current="settings">
      <Keys model={loadKeys(viewer, await searchParams)} make={makeAccessKey} revoke={revokeAccessKey} />
    </Frame>
  );
}
