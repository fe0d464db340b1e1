import { requireStudent } from "../../../../_server/gate";
import { loadFrame } from "../../../../_server/load-frame";
import { loadReview } from "../../../../_server/season/load-review";
import { Frame } from "../../../../_ui/frame/frame";
import { Review } from "../../../../_ui/review/review";

interface Asked {
  readonly params: Promise<{ readonly studentId: string }>;
  readonly searchParams: Promise<{ readonly club?: string }>;
}

export async function generateMetadata({ params }: Asked) {
  const viewer = await requireStudent("/students/[studentId]/review", (await params).studentId);
  return { title: viewer.words.say("document-title", { page: viewer.words.say("review") }) };
}

export default async function ReviewRoute({ params, searchParams }: Asked) {
  const viewer = await requireStudent("/students/[studentId]/review", (await params).studentId);
  const model = await loadReview(viewer, (await searchParams).club);
  return (
    <Frame model={loadFrame(viewer)} current="students">
      <Review model={model} />
    </Frame>
  );
}
