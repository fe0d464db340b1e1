import { requireLogIn } from "../../_server/gate";
import { loadFrame } from "../../_server/load-frame";
import { type AccountWish, loadAccount } from "../../_server/people/load-account";
import { Frame } from "../../_ui/frame/frame";
import { People } from "../../_ui/people/people";
import { changeOwnPassword, endOwnLogIns, submitAccount } from "./actions";

interface Asked {
  readonly searchParams: Promise<AccountWish>;
}

const ACTIONS = { save: submitAccount, password: changeOwnPassword, end: endOwnLogIns };

export default async function AccountRoute({ searchParams }: Asked) {
  const { viewer, logIn } = await requireLogIn("/account");
  return (
    <Frame model={loadFrame(viewer)} current="account">
      <People model={loadAccount(viewer, logIn, await searchParams)} actions={ACTIONS} />
    </Frame>
  );
}
