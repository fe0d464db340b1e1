import { buildDecidesPage, type DecidesPage } from "@/lib/report/build-decides";
import { linkTables } from "../archive/table-links";
import type { Viewer } from "../gate";
import { loadRuleNow } from "../goals/owning-desk";

/** How verdicts come about, in the viewer's words. */
export function loadDecides(viewer: Viewer): DecidesPage {
  return linkTables(viewer.words, "decides", {}, buildDecidesPage(viewer.words, loadRuleNow(viewer)));
}
