import { redirect } from "next/navigation";
import { loadSignIn } from "../../_server/access/load-sign-in";
import { findDoor, requireWords } from "../../_server/gate";
import { Entry } from "../../_ui/entry/entry";
import { ReadyAccounts } from "../../_ui/entry/ready-accounts";
import { Form } from "../../_ui/form/form";
import { PageHead } from "../../_ui/part/part";

interface Asked {
  readonly searchParams: Promise<{ readonly to?: string; readonly new?: string }>;
}

export async function generateMetadata() {
  return { title: (await requireWords()).say("sign-in.heading") };
}

export default async function SignInRoute({ searchParams }: Asked) {
  const door = await findDoor("/sign-in");
  if (door.kind === "no-academy") redirect("/start");
  const words = await requireWords();
  const model = await loadSignIn(words, door.choice, await searchParams);
  return (
    <Entry product={model.product}>
      {model.notice === "" ? null : <p role="status">{model.notice}</p>}
      {model.form ? (
        <Form model={model.form} action="/api/sign-in" />
      ) : (
        <PageHead title={model.documentTitle} lede={words.say("sign-in.demo.lede")} />
      )}
      {model.ready ? <ReadyAccounts model={model.ready} /> : null}
      {model.start ? (
        <p>
          <a href={model.start.href}>{model.start.label}</a>
        </p>
      ) : null}
      {model.other ? <Form model={model.other} action="/api/academy" /> : null}
    </Entry>
  );
}
