import { requireViewer } from "../../_server/gate";
import { loadFrame } from "../../_server/load-frame";
import { loadFilmingCard } from "../../_server/session/load-filming";
import { FilmingCard } from "../../_ui/filming/filming-card";
import { Frame } from "../../_ui/frame/frame";

interface Asked {
  readonly searchParams: Promise<{
    readonly view?: string | string[];
    readonly hand?: string | string[];
    readonly for?: string | string[];
  }>;
}

export async function generateMetadata({ searchParams }: Asked) {
  return { title: loadFilmingCard(await requireViewer("/filming"), await searchParams).documentTitle };
}

export default async function FilmingRoute({ searchParams }: Asked) {
  const viewer = await requireViewer("/filming");
  return (
    <Frame model={loadFrame(viewer)} current="filming">
      <FilmingCard model={loadFilmingCard(viewer, await searchParams)} />
    </Frame>
  );
}
