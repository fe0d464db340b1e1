import { notFound } from "next/navigation";
import { loadSpread, spreadTitle } from "../../../_server/academy/load-spread";
import { requireViewer } from "../../../_server/gate";
import { loadFrame } from "../../../_server/load-frame";
import { Frame } from "../../../_ui/frame/frame";
import { Spread } from "../../../_ui/spread/spread";

interface Asked {
  readonly params: Promise<{ readonly fundamental: string }>;
  readonly searchParams: Promise<Readonly<Record<string, string | readonly string[] | undefined>>>;
}

export async function generateMetadata() {
  return { title: spreadTitle((await requireViewer("/academy/[fundamental]")).words) };
}

export default async function SpreadRoute({ params, searchParams }: Asked) {
  const viewer = await requireViewer("/academy/[fundamental]");
  const { of } = await searchParams;
  const asked = { of: typeof of === "string" ? of : undefined };
  const model = await loadSpread(viewer, (await params).fundamental, asked);
  if (model === null) notFound();
  return (
    <Frame model={loadFrame(viewer)} current="academy">
      <Spread model={model} />
    </Frame>
  );
}
