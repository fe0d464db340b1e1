import { requireLogIn } from "../../../_server/gate";
import { loadFrame } from "../../../_server/load-frame";
import { loadSecondStep, type SecondStepWish } from "../../../_server/people/load-second-step";
import { Frame } from "../../../_ui/frame/frame";
import { People } from "../../../_ui/people/people";
import { beginOwnSecondStep, dropOwnSecondStep, proveOwnSecondStep } from "./actions";

interface Asked {
  readonly searchParams: Promise<SecondStepWish>;
}

const ACTIONS = { begin: beginOwnSecondStep, prove: proveOwnSecondStep, drop: dropOwnSecondStep };

export default async function SecondStepRoute({ searchParams }: Asked) {
  const { viewer, logIn } = await requireLogIn("/account/second-step");
  return (
    <Frame model={loadFrame(viewer)} current="account">
      <People model={loadSecondStep(viewer, logIn, await searchParams)} actions={ACTIONS} />
    </Frame>
  );
}
