import { isRead } from "../../_server/door/asked-method";
import { loadFamily } from "../../_server/family/load-family";
import { noteOpening } from "../../_server/family/note-opening";
import { requireFamily } from "../../_server/family-gate";
import { requireWords } from "../../_server/gate";
import { Entry } from "../../_ui/entry/entry";
import { Family } from "../../_ui/family/family";

interface Asked {
  readonly params: Promise<{ readonly pageId: string }>;
  readonly searchParams: Promise<{ readonly done?: string }>;
}

export async function generateMetadata() {
  return { title: (await requireWords()).say("family.document-title") };
}

export default async function FamilyRoute({ params, searchParams }: Asked) {
  const family = await requireFamily("/family/[pageId]", (await params).pageId);
  const model = await loadFamily(family, (await searchParams).done);
  if (await isRead()) noteOpening(family);
  return (
    <Entry product={family.words.say("product")}>
      <Family model={model} />
    </Entry>
  );
}
