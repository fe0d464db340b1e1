import { notFound } from "next/navigation";
import { requireStudent } from "../../../../../_server/gate";
import { loadFrame } from "../../../../../_server/load-frame";
import { loadReadBack } from "../../../../../_server/season/load-read-back";
import { Form } from "../../../../../_ui/form/form";
import { Frame } from "../../../../../_ui/frame/frame";
import { HappenPage } from "../../../../../_ui/happen/happen-page";
import { KeepTyped } from "../../../../../_ui/happen/keep-typed";
import { keepTypedReadBack, submitReadBack, submitReadBackDrop } from "./actions";

interface Asked {
  readonly params: Promise<{ readonly studentId: string; readonly readBackId: string }>;
  readonly searchParams: Promise<{ readonly draft?: string }>;
}

export default async function ReadBackRoute({ params, searchParams }: Asked) {
  const { studentId, readBackId } = await params;
  const viewer = await requireStudent(studentId);
  const room = loadReadBack(viewer, readBackId, (await searchParams).draft);
  if (!room) notFound();
  return (
    <Frame model={loadFrame(viewer)} current="students">
      {room.kind === "over" ? (
        <HappenPage model={room.page} />
      ) : (
        <>
          <KeepTyped action={keepTypedReadBack} words={room.keep}>
            <Form model={room.form} action={submitReadBack} />
          </KeepTyped>
          <Form model={room.drop} action={submitReadBackDrop} />
        </>
      )}
    </Frame>
  );
}
