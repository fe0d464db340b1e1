import { requireStudent } from "../../../../../_server/gate";
import { loadFrame } from "../../../../../_server/load-frame";
import { type AskedInherit, loadInherit } from "../../../../../_server/people/load-inherit";
import { Frame } from "../../../../../_ui/frame/frame";
import { People } from "../../../../../_ui/people/people";
import { submitInherited, submitTenTwice } from "./actions";

interface Asked {
  readonly params: Promise<{ readonly studentId: string }>;
  readonly searchParams: Promise<AskedInherit>;
}

const ACTIONS = { seen: submitInherited, ten: submitTenTwice };

export async function generateMetadata({ params }: Asked) {
  const viewer = await requireStudent("/students/[studentId]/handing-over/inherit", (await params).studentId);
  return { title: viewer.words.say("document-title", { page: viewer.words.say("inherit.document-title") }) };
}

export default async function InheritRoute({ params, searchParams }: Asked) {
  const viewer = await requireStudent("/students/[studentId]/handing-over/inherit", (await params).studentId);
  return (
    <Frame model={loadFrame(viewer)} current="students">
      <People model={await loadInherit(viewer, await searchParams)} actions={ACTIONS} />
    </Frame>
  );
}
