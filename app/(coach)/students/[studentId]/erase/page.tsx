import { type EraseWish, loadErase } from "../../../../_server/erase/load-erase";
import { requireStudent } from "../../../../_server/gate";
import { loadFrame } from "../../../../_server/load-frame";
import { Frame } from "../../../../_ui/frame/frame";
import { People } from "../../../../_ui/people/people";
import { submitErase } from "./actions";

interface Asked {
  readonly params: Promise<{ readonly studentId: string }>;
  readonly searchParams: Promise<EraseWish>;
}

const ACTIONS = { erase: submitErase };

export async function generateMetadata({ params }: Asked) {
  const viewer = await requireStudent("/students/[studentId]/erase", (await params).studentId);
  return { title: viewer.words.say("erase.document") };
}

export default async function EraseRoute({ params, searchParams }: Asked) {
  const viewer = await requireStudent("/students/[studentId]/erase", (await params).studentId);
  return (
    <Frame model={loadFrame(viewer)} current="students">
      <People model={loadErase(viewer, await searchParams)} actions={ACTIONS} />
    </Frame>
  );
}
