import { requireStudent } from "../../../../_server/gate";
import { loadFrame } from "../../../../_server/load-frame";
import { loadReadBacks } from "../../../../_server/season/load-read-back";
import { Choices } from "../../../../_ui/choices/choices";
import { Frame } from "../../../../_ui/frame/frame";
import { HappenPage } from "../../../../_ui/happen/happen-page";
import { PartForm } from "../../../../_ui/happen/part-form";
import { Part } from "../../../../_ui/part/part";
import { submitReadBackWish } from "./actions";

interface Asked {
  readonly params: Promise<{ readonly studentId: string }>;
  readonly searchParams: Promise<{ readonly fundamental?: string; readonly reader?: string; readonly draft?: string }>;
}

export async function generateMetadata({ params }: Asked) {
  return { title: loadReadBacks(await requireStudent((await params).studentId), {}).page.documentTitle };
}

export default async function ReadBacksRoute({ params, searchParams }: Asked) {
  const viewer = await requireStudent((await params).studentId);
  const room = loadReadBacks(viewer, await searchParams);
  const before = (
    <>
      {room.fundamentals.links.length === 0 ? null : (
        <Part margin={room.fundamentals.label}>
          <Choices {...room.fundamentals} />
        </Part>
      )}
      {room.readers === null ? null : (
        <Part margin={room.readers.label}>
          <Choices {...room.readers} />
        </Part>
      )}
      {room.wish === null ? null : <PartForm model={room.wish} action={submitReadBackWish} />}
    </>
  );
  return (
    <Frame model={loadFrame(viewer)} current="students">
      <HappenPage model={room.page} before={before} />
    </Frame>
  );
}
