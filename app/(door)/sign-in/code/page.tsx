import { codeForm, NOTHING_TYPED } from "../../../_server/access/entry-forms";
import { requireWords } from "../../../_server/gate";
import { Entry } from "../../../_ui/entry/entry";
import { Form } from "../../../_ui/form/form";

interface Asked {
  readonly searchParams: Promise<{ readonly to?: string }>;
}

export async function generateMetadata() {
  return { title: (await requireWords()).say("sign-in-code.heading") };
}

export default async function SignInCodeRoute({ searchParams }: Asked) {
  const words = await requireWords();
  return (
    <Entry product={words.say("product")}>
      <Form model={codeForm(words, NOTHING_TYPED, (await searchParams).to ?? "")} action="/api/sign-in/code" />
    </Entry>
  );
}
