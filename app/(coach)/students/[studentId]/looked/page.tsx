import { loadLooked } from "../../../../_server/access/load-looked";
import { requireStudent } from "../../../../_server/gate";
import { loadFrame } from "../../../../_server/load-frame";
import { Frame } from "../../../../_ui/frame/frame";
import { Looked } from "../../../../_ui/looked/looked";

interface Asked {
  readonly params: Promise<{ readonly studentId: string }>;
  readonly searchParams: Promise<{ readonly page?: string }>;
}

export async function generateMetadata({ params }: Asked) {
  const { words } = await requireStudent("/students/[studentId]/looked", (await params).studentId);
  return { title: words.say("document-title", { page: words.say("looked.document-title") }) };
}

export default async function LookedRoute({ params, searchParams }: Asked) {
  const viewer = await requireStudent("/students/[studentId]/looked", (await params).studentId);
  return (
    <Frame model={loadFrame(viewer)} current="students">
      <Looked model={loadLooked(viewer, (await searchParams).page)} />
    </Frame>
  );
}
