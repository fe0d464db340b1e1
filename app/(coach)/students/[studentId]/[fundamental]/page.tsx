import { loadPrescribe } from "../../../../_server/drill/load-prescribe";
import { requireStudent } from "../../../../_server/gate";
import { loadFrame } from "../../../../_server/load-frame";
import { loadFundamentalTitle } from "../../../../_server/season/load-fundamental";
import { loadFundamentalPage } from "../../../../_server/season/load-fundamental-page";
import { Prescribe } from "../../../../_ui/drill/prescribe";
import { Frame } from "../../../../_ui/frame/frame";
import { Fundamental } from "../../../../_ui/fundamental/fundamental";
import { askFilms, submitAsking } from "./actions";

interface Asked {
  readonly params: Promise<{ readonly studentId: string; readonly fundamental: string }>;
  readonly searchParams: Promise<{
    readonly club?: string;
    readonly films?: string;
    readonly swings?: string;
    readonly care?: string;
  }>;
}

export async function generateMetadata({ params }: Asked) {
  const { studentId, fundamental } = await params;
  const viewer = await requireStudent("/students/[studentId]/[fundamental]", studentId);
  return { title: loadFundamentalTitle(viewer, fundamental) };
}

export default async function FundamentalRoute({ params, searchParams }: Asked) {
  const { studentId, fundamental } = await params;
  const viewer = await requireStudent("/students/[studentId]/[fundamental]", studentId);
  const { club, ...films } = await searchParams;
  const model = await loadFundamentalPage(viewer, fundamental, club, films);
  return (
    <Frame model={loadFrame(viewer)} current="students">
      <Fundamental
        model={model}
        words={loadFrame(viewer).chartWords}
        askAction={submitAsking}
        askFilms={askFilms}
        prescribe={<Prescribe model={loadPrescribe(viewer, fundamental)} tone="quiet" />}
      />
    </Frame>
  );
}
