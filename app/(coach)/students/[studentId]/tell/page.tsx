import { loadTell } from "../../../../_server/family/load-tell";
import { requireStudent } from "../../../../_server/gate";
import { loadFrame } from "../../../../_server/load-frame";
import { Frame } from "../../../../_ui/frame/frame";
import { Tell } from "../../../../_ui/tell/tell";
import { submitFamilyLanguage, submitTold, submitToldBack } from "./actions";

interface Asked {
  readonly params: Promise<{ readonly studentId: string }>;
  readonly searchParams: Promise<{ readonly done?: string }>;
}

export async function generateMetadata({ params }: Asked) {
  const { words } = await requireStudent("/students/[studentId]/tell", (await params).studentId);
  return { title: words.say("document-title", { page: words.say("tell") }) };
}

export default async function TellRoute({ params, searchParams }: Asked) {
  const viewer = await requireStudent("/students/[studentId]/tell", (await params).studentId);
  const model = await loadTell(viewer, (await searchParams).done);
  return (
    <Frame model={loadFrame(viewer)} current="students">
      <Tell model={model} keep={submitTold} back={submitToldBack} language={submitFamilyLanguage} />
    </Frame>
  );
}
