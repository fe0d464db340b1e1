import { requireDraftId } from "../../../../../_server/draft/draft-forms";
import { requireStudent } from "../../../../../_server/gate";
import { loadFrame } from "../../../../../_server/load-frame";
import { loadFilmingLink } from "../../../../../_server/session/load-filming";
import { loadSessionForm } from "../../../../../_server/session/load-forms";
import { FilmingLink } from "../../../../../_ui/filming/filming-link";
import { Form } from "../../../../../_ui/form/form";
import { Frame } from "../../../../../_ui/frame/frame";
import {
  askCaptures,
  askNote,
  keepGrid,
  refreshForm,
  showCaptures,
  showNote,
  submitSession,
  turnLines,
} from "./actions";

interface Asked {
  readonly params: Promise<{ readonly studentId: string }>;
  readonly searchParams: Promise<{ readonly draft?: string; readonly dropped?: string }>;
}

export default async function NewSessionRoute({ params, searchParams }: Asked) {
  const viewer = await requireStudent("/students/[studentId]/sessions/new", (await params).studentId);
  const { draft, dropped } = await searchParams;
  const draftId = requireDraftId(`/students/${viewer.student.studentId}/sessions/new`, draft, dropped);
  return (
    <Frame model={loadFrame(viewer)} current="record">
      <FilmingLink link={loadFilmingLink(viewer)} />
      <Form
        model={await loadSessionForm(viewer, draftId, dropped)}
        action={submitSession}
        refresh={refreshForm}
        films={{ ask: askCaptures, show: showCaptures }}
        notes={{ ask: askNote, show: showNote }}
        grid={{ keep: keepGrid, turn: turnLines }}
      />
    </Frame>
  );
}
