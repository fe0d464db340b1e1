import { type AskedForm, requireDraftId } from "../../../../_server/draft/draft-forms";
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
  readonly searchParams: Promise<AskedForm & { readonly fundamental?: string; readonly reader?: string }>;
}

export async function generateMetadata({ params }: Asked) {
  return {
    title: loadReadBacks(await requireStudent("/students/[studentId]/read-back", (await params).studentId), {}).page
      .documentTitle,
  };
}

export default async function ReadBacksRoute({ params, searchParams }: Asked) {
  const viewer = await requireStudent("/students/[studentId]/read-back", (await params).studentId);
  const { draft, dropped, ...chosen } = await searchParams;
  const page = `/students/${viewer.student.studentId}/read-back`;
  const { fundamental, reader } = chosen;
  const draftId = requireDraftId(page, draft, dropped, { fundamental, reader });
  const room = loadReadBacks(viewer, { ...chosen, draft: draftId, dropped });
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
