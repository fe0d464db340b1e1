import { requireViewer } from "../../../_server/gate";
import { loadFrame } from "../../../_server/load-frame";
import { type GroupWish, loadGroupPage } from "../../../_server/session/load-group";
import { Form } from "../../../_ui/form/form";
import { Frame } from "../../../_ui/frame/frame";
import { ChooseGroup } from "../../../_ui/group/choose-group";
import { askGroup, askGroupNote, showGroup, showGroupNote, submitGroup } from "./actions";

export default async function GroupRoute({ searchParams }: { readonly searchParams: Promise<GroupWish> }) {
  const viewer = await requireViewer("/record/group");
  const step = await loadGroupPage(viewer, await searchParams);
  return (
    <Frame model={loadFrame(viewer)} current="record">
      {step.kind === "choose" ? (
        <ChooseGroup model={step.page} />
      ) : (
        <Form
          model={step.form}
          action={submitGroup}
          refresh={showGroup}
          films={{ ask: askGroup, show: showGroup }}
          notes={{ ask: askGroupNote, show: showGroupNote }}
        />
      )}
    </Frame>
  );
}
