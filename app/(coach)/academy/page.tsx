import { academyTitle, loadAcademyPage } from "../../_server/academy/load-academy";
import { requireViewer } from "../../_server/gate";
import { loadFrame } from "../../_server/load-frame";
import { AcademyPage } from "../../_ui/academy/academy-page";
import { Frame } from "../../_ui/frame/frame";

type Asked = { readonly searchParams: Promise<Readonly<Record<string, string | readonly string[] | undefined>>> };

export async function generateMetadata() {
  return { title: academyTitle((await requireViewer("/academy")).words) };
}

export default async function AcademyRoute({ searchParams }: Asked) {
  const viewer = await requireViewer("/academy");
  const { of } = await searchParams;
  const model = await loadAcademyPage(viewer, { of: typeof of === "string" ? of : undefined });
  return (
    <Frame model={loadFrame(viewer)} current="academy">
      <AcademyPage model={model} />
    </Frame>
  );
}
