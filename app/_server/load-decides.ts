import { buildDecidesPage, type DecidesPage } from "@/lib/report/build-decides";
import type { Viewer } from "./gate";
import { linkTables } from "./table-links";

/** How verdicts come about, in the viewer's words. */
export function loadDecides(viewer: Viewer): DecidesPage {
  return linkTables(viewer.words, "decides", {}, buildDecidesPage(viewer.words));
}
