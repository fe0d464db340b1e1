import { requireStudent } from "../../../../_server/gate";
import { loadFrame } from "../../../../_server/load-frame";
import { loadEvents } from "../../../../_server/season/load-events";
import { Frame } from "../../../../_ui/frame/frame";
import { HappenPage } from "../../../../_ui/happen/happen-page";

interface Asked {
  readonly params: Promise<{ readonly studentId: string }>;
}

export async function generateMetadata({ params }: Asked) {
  return {
    title: loadEvents(await requireStudent("/students/[studentId]/events", (await params).studentId)).documentTitle,
  };
}

export default async function EventsRoute({ params }: Asked) {
  const viewer = await requireStudent("/students/[studentId]/events", (await params).studentId);
  return (
    <Frame model={loadFrame(viewer)} current="students">
      <HappenPage model={loadEvents(viewer)} />
    </Frame>
  );
}
