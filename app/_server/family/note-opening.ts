import { withoutWaiting } from "@/db/client";
import { readOpenings } from "@/db/read/family-links";
import { insertOpening } from "@/db/write/family-links";
import { keepLooks } from "../access/look-queue";
import { readClock } from "../clock";
import { orNothing } from "../door/when-disk-fails";
import type { FamilyViewer } from "../family-gate";

/** The page read again within this time is the same opening: every press on it leads back to it. */
export const SAME_OPENING_MS = 10 * 60_000;

/**
 * Keeps that a link was opened, and that a record was looked at: the page itself read with the link's cookie. Following the link
 * alone, as a mail scanner does, is none, nor is asking whether the page is there.
 */
export function noteOpening({ db, student, link }: FamilyViewer): void {
  const now = readClock();
  const last = readOpenings(db, student).find(({ linkId }) => linkId === link.id)?.openedAt;
  const since = last === undefined ? Number.POSITIVE_INFINITY : now.getTime() - Date.parse(last);
  // A clock that was set back begins a new one.
  if (since >= 0 && since < SAME_OPENING_MS) return;
  const at = now.toISOString();
  // Neither a full disk nor an import that is being written keeps anybody from their own page: an opening that isn't kept is
  // kept with the next one, and the look waits until it can be written.
  orNothing(() => withoutWaiting(db, () => insertOpening(db, link.id, at)));
  const view = { who: link.label, role: "family", what: "page", place: "/family/[pageId]", viewedAt: at } as const;
  keepLooks(db, [{ scope: student, view }]);
}
