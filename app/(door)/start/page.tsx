import { redirect } from "next/navigation";
import { NOTHING_TYPED } from "../../_server/access/entry-forms";
import { startForm, startState } from "../../_server/access/start-desk";
import { requireWords } from "../../_server/gate";
import { Entry } from "../../_ui/entry/entry";
import { Form } from "../../_ui/form/form";

export async function generateMetadata() {
  return { title: (await requireWords()).say("first-steps.heading") };
}

export default async function StartRoute() {
  const words = await requireWords();
  const { state, ownerName } = await startState();
  if (state === "there") redirect("/sign-in");
  return (
    <Entry product={words.say("product")}>
      <Form model={startForm(words, state, ownerName, NOTHING_TYPED)} action="/api/start" />
    </Entry>
  );
}
