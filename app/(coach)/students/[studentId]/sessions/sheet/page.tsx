import { requireStudent } from "../../../../../_server/gate";
import { loadFrame } from "../../../../../_server/load-frame";
import { loadReadingSheet } from "../../../../../_server/session/load-sheet";
import { Frame } from "../../../../../_ui/frame/frame";
import { ReadingSheet } from "../../../../../_ui/sheet/reading-sheet";

interface Asked {
  readonly params: Promise<{ readonly studentId: string }>;
  readonly searchParams: Promise<{ readonly swings?: string | string[]; readonly columns?: string | string[] }>;
}

export async function generateMetadata({ params, searchParams }: Asked) {
  const viewer = await requireStudent("/students/[studentId]/sessions/sheet", (await params).studentId);
  return { title: (await loadReadingSheet(viewer, await searchParams)).documentTitle };
}

export default async function ReadingSheetRoute({ params, searchParams }: Asked) {
  const viewer = await requireStudent("/students/[studentId]/sessions/sheet", (await params).studentId);
  return (
    <Frame model={loadFrame(viewer)} current="record">
      <ReadingSheet model={await loadReadingSheet(viewer, await searchParams)} />
    </Frame>
  );
}
