import { loadPrescribe } from "../../../_server/drill/load-prescribe";
import { studentFamilyNotices } from "../../../_server/family/family-notices";
import { requireStudent } from "../../../_server/gate";
import { loadFrame } from "../../../_server/load-frame";
import { loadSeasonPage } from "../../../_server/season/load-season";
import { Prescribe } from "../../../_ui/drill/prescribe";
import { Frame } from "../../../_ui/frame/frame";
import { Season } from "../../../_ui/season/season";

interface Asked {
  readonly params: Promise<{ readonly studentId: string }>;
  readonly searchParams: Promise<{ readonly club?: string }>;
}

export async function generateMetadata({ params, searchParams }: Asked) {
  const viewer = await requireStudent("/students/[studentId]", (await params).studentId);
  return { title: (await loadSeasonPage(viewer, (await searchParams).club)).documentTitle };
}

export default async function SeasonRoute({ params, searchParams }: Asked) {
  const viewer = await requireStudent("/students/[studentId]", (await params).studentId);
  const model = await loadSeasonPage(viewer, (await searchParams).club);
  return (
    <Frame model={loadFrame(viewer)} current="students">
      <Season
        model={{ ...model, notices: [...model.notices, ...studentFamilyNotices(viewer)] }}
        prescribe={
          <Prescribe
            model={loadPrescribe(viewer, model.next?.drillFor ?? null)}
            tone={model.next?.action ? "quiet" : "next"}
          />
        }
      />
    </Frame>
  );
}
