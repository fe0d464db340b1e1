import type { CountedAs } from "@/lib/domain/counted-as";
import type { RosterView } from "@/lib/domain/roster-view";
import { openWhy } from "@/lib/report/open-why";
import { saidGlyph } from "@/lib/report/said";
import type { TrackSummary } from "@/lib/report/track-summary";
import type { Viewer } from "../gate";
import { loadCountedFilms, readRecorded } from "./counted-films";

const NOTHING: ReadonlySet<string> = new Set();

/**
 * For what each student is counted on the academy's page, as the roster asks for it; nothing is worked out for a view that
 * doesn't ask.
 *
 * @param view with clubs only what was done with them counts
 * @param tracks all of each student
 */
export function countedStudents(
  viewer: Viewer,
  { counted, club }: Pick<RosterView, "counted" | "club">,
  tracks: ReadonlyMap<string, readonly TrackSummary[]>,
): (studentId: string) => ReadonlySet<string> {
  if (counted === null) return () => NOTHING;
  const found = new Map<string, Set<string>>();
  const count = (studentId: string, as: CountedAs): void => {
    found.set(studentId, (found.get(studentId) ?? new Set()).add(as));
  };
  const isAsked = ({ clubGroup }: { readonly clubGroup: string }): boolean => club === null || clubGroup === club;
  for (const [studentId, all] of tracks)
    for (const { verdict } of all.filter(isAsked))
      if (saidGlyph(verdict) === "open") count(studentId, `open-${openWhy(verdict)}`);
  const { drilled, waiting } = readRecorded(viewer);
  for (const { studentId, state } of loadCountedFilms(viewer, tracks).filter(isAsked)) {
    count(studentId, `film-${state}`);
    if (drilled.has(studentId)) count(studentId, "filmed-on-a-drill");
    else count(studentId, waiting.has(studentId) ? "filmed-waiting" : "filmed-unrecorded");
  }
  return (studentId) => found.get(studentId) ?? NOTHING;
}
