import { requireDraftId } from "../../../_server/draft/draft-forms";
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
  const viewer = await requireViewer("/settings/keys");
  const { draft, dropped, made } = await searchParams;
  const wish = { made, draft: requireDraftId("/settings/keys", draft, dropped, { made }), dropped };
  return (
    <Frame model={loadFrame(viewer)} current="settings">
      <Keys model={loadKeys(viewer, wish)} make={makeAccessKey} revoke={revokeAccessKey} />
    </Frame>
  );
}
