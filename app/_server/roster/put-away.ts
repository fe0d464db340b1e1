import { readPreferencesUnder } from "@/db/read/preferences";
import { deletePreference, insertPreference } from "@/db/write/preferences";
import type { BriefFinding } from "@/lib/report/brief-finding";
import { type Viewer, viewerKey } from "../gate";

/** A row a student, so that erasing one lets go of nothing that is another's. */
const BEGINS = "put-away ";

function readRows({ db, scope, ...viewer }: Viewer): ReadonlyMap<string, readonly string[]> {
  const rows = readPreferencesUnder(db, scope, viewerKey({ db, scope, ...viewer }), BEGINS);
  return new Map(rows.map(({ name, value }) => [name.slice(BEGINS.length), JSON.parse(value) as string[]]));
}

/** Keys of the lines of the brief that the viewer has put away. */
export function readPutAway(viewer: Viewer): ReadonlySet<string> {
  return new Set([...readRows(viewer).values()].flat());
}

/**
 * Puts lines of the viewer's brief away or brings them back. What isn't found any more is let go of on the way, so that
 * nothing gathers.
 *
 * @param chosen of the findings that there are now
 * @param findings every finding that there is now
 */
export function keepPutAway(
  viewer: Viewer,
  chosen: readonly BriefFinding[],
  to: "put-away" | "stands",
  findings: readonly BriefFinding[],
): void {
  const { db, scope } = viewer;
  const rows = readRows(viewer);
  const found = new Set(findings.map(({ key }) => key));
  for (const studentId of new Set(chosen.map((finding) => finding.studentId))) {
    const own = new Set(chosen.filter((finding) => finding.studentId === studentId).map(({ key }) => key));
    const others = (rows.get(studentId) ?? []).filter((key) => found.has(key) && !own.has(key));
    const kept = to === "put-away" ? [...others, ...own] : others;
    const name = `${BEGINS}${studentId}`;
    if (kept.length === 0) deletePreference(db, scope, viewerKey(viewer), name);
    else insertPreference(db, scope, { viewer: viewerKey(viewer), name, value: JSON.stringify(kept) });
  }
}
