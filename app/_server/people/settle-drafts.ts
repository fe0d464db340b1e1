import { readStrayDrafts } from "@/db/read/handing";
import { updateDraftOwners } from "@/db/write/handing";
import { dayIn } from "../clock";
import { diskFailureOf } from "../door/disk-failure";
import type { Viewer } from "../gate";

/**
 * Gives forms that were left behind when a student changed hands to whoever has the student now, so that nothing typed lies
 * where nobody can reach it: a hand-over or the end of a cover comes with its day, and nobody presses anything then.
 * Of whoever handed over and may still see the student only what was typed before that day goes along.
 *
 * @returns forms that went along
 */
export function settleDrafts({ db, academy, today }: Pick<Viewer, "db" | "academy" | "today">): number {
  const stray = readStrayDrafts(db, academy.id, today).filter(
    ({ why, updatedAt, fromDay }) => why === "lost" || dayIn(academy.zone, new Date(updatedAt)) < fromDay,
  );
  const coaches = [...new Set(stray.map(({ coachId }) => coachId))];
  return coaches.reduce((sum, coachId) => {
    const ids = stray.filter((each) => each.coachId === coachId).map(({ id }) => id);
    return sum + updateDraftOwners(db, ids, coachId);
  }, 0);
}

/** The same where a page is only read: while the disk takes nothing, the forms stay where they are. */
export function trySettlingDrafts(viewer: Viewer): void {
  try {
    settleDrafts(viewer);
  } catch (error) {
    if (diskFailureOf(error) === null) throw error;
  }
}
