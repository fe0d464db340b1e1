import { readAcademy } from "@/db/read/academies";
import { diskFailureOf } from "../door/disk-failure";
import type { Viewer } from "../gate";
import { judgeAnew } from "../roster/load-verdicts";
import { noteJudged } from "./judging";

/**
 * Begins to judge beside the request what was changed with it, so that no page view has to set it off. For changes after
 * which no verdict is shown at once; what brings a film judges before it answers. A page that is asked for meanwhile waits
 * for what is going on instead of doing it again.
 *
 * @returns when it is over, whatever came of it: what fails here is met again, and told, by the first page that judges
 */
export async function judgeSoon(viewer: Viewer): Promise<void> {
  const { academyId } = viewer.scope;
  try {
    // As it is now: the change may have been the academy's own.
    await judgeAnew({ ...viewer, academy: readAcademy(viewer.db, viewer.scope) });
    noteJudged(academyId, "kept");
  } catch (error) {
    if (diskFailureOf(error) !== null) noteJudged(academyId, "not-kept");
  }
}
