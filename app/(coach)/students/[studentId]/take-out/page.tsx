import { loadTakeOut } from "../../../../_server/archive/load-take-out";
import { requireStudent } from "../../../../_server/gate";
import { loadFrame } from "../../../../_server/load-frame";
import { Frame } from "../../../../_ui/frame/frame";
import { BackLink } from "../../../../_ui/part/back-link";
import { PageHead } from "../../../../_ui/part/part";
import { TextPart } from "../../../../_ui/text-page/text-page";

interface Asked {
  readonly params: Promise<{ readonly studentId: string }>;
}

export async function generateMetadata({ params }: Asked) {
  const viewer = await requireStudent("/students/[studentId]/take-out", (await params).studentId);
  return { title: viewer.words.say("take-out.document") };
}

export default async function TakeOutRoute({ params }: Asked) {
  const viewer = await requireStudent("/students/[studentId]/take-out", (await params).studentId);
  const model = await loadTakeOut(viewer);
  return (
    <Frame model={loadFrame(viewer)} current="students">
      <PageHead title={model.title} lede={model.lede} before={<BackLink link={model.back} />} />
      {model.parts.map((part) => (
        <TextPart key={part.margin} part={part} />
      ))}
    </Frame>
  );
}
