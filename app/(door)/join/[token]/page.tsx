import { notFound } from "next/navigation";
import { requireWords } from "../../../_server/gate";
import { loadJoin } from "../../../_server/people/load-join";
import { Entry } from "../../../_ui/entry/entry";
import { Form } from "../../../_ui/form/form";

interface Asked {
  readonly params: Promise<{ readonly token: string }>;
}

export async function generateMetadata() {
  return { title: (await requireWords()).say("join.document-title") };
}

export default async function JoinRoute({ params }: Asked) {
  const words = await requireWords();
  const form = await loadJoin(words, (await params).token);
  if (form === null) notFound();
  return (
    <Entry product={words.say("product")}>
      <Form model={form} action="/api/join" />
    </Entry>
  );
}
