import { requireViewer } from "../../../_server/gate";
import { loadStudentForm } from "../../../_server/load-forms";
import { loadFrame } from "../../../_server/load-frame";
import { Form } from "../../../_ui/form/form";
import { Frame } from "../../../_ui/frame/frame";
import { submitStudent } from "./actions";

interface Asked {
  readonly searchParams: Promise<{ readonly draft?: string }>;
}

export default async function NewStudentRoute({ searchParams }: Asked) {
  const viewer = await requireViewer();
  return (
    <Frame model={loadFrame(viewer)} current="students">
      <Form model={loadStudentForm(viewer, (await searchParams).draft)} action={submitStudent} />
    </Frame>
  );
}
