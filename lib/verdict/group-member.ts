import type { View } from "@/lib/domain/fundamental";
import { filmedSessions } from "./filmed-sessions";
import type { GroupMember } from "./group-jump";
import type { HistorySession, TrackHistory } from "./session-history";
import type { StudentRecord } from "./student-record";

/**
 * One student's part of a group session, for one view.
 *
 * The session itself counts also where the student's own fundamentals had it set aside for the phone, which is what the
 * group is asked about; earlier ones count as the tracks have them.
 *
 * @param tracks the student's, with the club group of the session; others are passed over
 * @param groupId of the group session
 * @returns null: the student has no counting session of that group and view
 */
export function groupMember(
  record: StudentRecord,
  tracks: readonly TrackHistory[],
  groupId: string,
  view: View,
): GroupMember | null {
  const session = record.sessions.find((each) => each.groupId === groupId);
  if (session === undefined) return null;
  const own = tracks.filter((track) => track.clubGroup === session.clubGroup && track.fundamental.view === view);
  const counts = (entry: HistorySession): boolean =>
    entry.apart === null ||
    entry.apart.kind === "before" ||
    (entry.apart.kind === "fingerprint" && entry.session.id === session.id);
  const filmed = filmedSessions(record, view, own, counts);
  const at = filmed.findIndex((each) => each.id === session.id);
  const found = filmed[at];
  return found === undefined ? null : { session: found, earlier: filmed.slice(0, at) };
}
