import { buildDecidesPage, type DecidesPage } from "@/lib/report/build-decides";
import type { Viewer } from "./gate";

/** How verdicts come about, in the viewer's words. */
export function loadDecides(viewer: Viewer): DecidesPage {
  return buildDecidesPage(viewer.words);
}
