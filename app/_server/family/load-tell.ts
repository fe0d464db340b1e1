import { buildTellPage } from "@/lib/report/build-tell";
import type { TellPage } from "@/lib/report/tell-model";
import { daysHere } from "../clock";
import type { StudentViewer } from "../gate";
import { mayShare } from "./link-desk";
import { loadTelling, shownDigests } from "./load-telling";

/** The page on which a coach tells the family. */
export async function loadTell(viewer: StudentViewer, done: string | undefined): Promise<TellPage> {
  const loaded = await loadTelling(viewer);
  return buildTellPage(viewer.words, {
    family: loaded.words,
    telling: loaded.telling,
    share: mayShare(viewer) ? "given" : "missing",
    shown: shownDigests(loaded),
    done: done ?? null,
    dayOf: daysHere(viewer.academy),
  });
}
