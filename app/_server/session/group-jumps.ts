import { type GroupSession, readGroupSessions } from "@/db/read/group-sessions";
import { VIEWS } from "@/lib/domain/fundamental";
import { sayGroupJump } from "@/lib/report/build-group-jump";
import { type GroupJump, groupJump } from "@/lib/verdict/group-jump";
import { groupMember } from "@/lib/verdict/group-member";
import { trackHistories } from "@/lib/verdict/track-history";
import { admitToStudent, type Viewer } from "../gate";
import { type AcademyRules, loadAcademyRules, loadStudentRecord } from "../season/student-record";

/** Group sessions whose answer is kept in memory; the oldest goes first. */
const KEPT = 200;

const kept = new Map<string, readonly GroupJump[]>();

/** What is on file of a group session; it changes with any of its students' data. */
function keyOf(viewer: Viewer, sessions: readonly GroupSession[]): string {
  const parts = sessions.map(({ sessionId, revision }) => `${sessionId} ${revision}`);
  return [viewer.scope.academyId, viewer.academy.seasonStart, ...parts].join("\n");
}

/**
 * The jumps common to a group, a view each; as known on the day of the session, so that later films say nothing else.
 *
 * @param sessions those of one group
 */
function jumpsOf(viewer: Viewer, sessions: readonly GroupSession[], rules: AcademyRules): readonly GroupJump[] {
  const key = keyOf(viewer, sessions);
  const known = kept.get(key);
  if (known) return known;
  const students = sessions.flatMap(({ studentId, groupId, day }) => {
    const scope = admitToStudent(viewer, studentId);
    if (!scope) return [];
    const record = loadStudentRecord(viewer.db, scope, rules);
    return [{ record, groupId, tracks: trackHistories(record, day) }];
  });
  const jumps = VIEWS.flatMap((view) => {
    const members = students.flatMap(({ record, tracks, groupId }) => groupMember(record, tracks, groupId, view) ?? []);
    return groupJump(view, members) ?? [];
  });
  if (kept.size >= KEPT) kept.delete(kept.keys().next().value ?? "");
  kept.set(key, jumps);
  return jumps;
}

/** What is said of the phone of one group session, a sentence a view; empty: nothing. */
export function groupNotices(viewer: Viewer, groupId: string): readonly string[] {
  return noticesOf(viewer, (session) => session.groupId === groupId, VIEWS);
}

/** The same for the group sessions among some of a student's, in one view. */
export function groupNoticesOf(
  viewer: Viewer,
  sessions: readonly { readonly groupId: string | null }[],
  view: (typeof VIEWS)[number],
): readonly string[] {
  const wished = new Set(sessions.map((session) => session.groupId));
  if (wished.size === 0 || (wished.size === 1 && wished.has(null))) return [];
  return noticesOf(viewer, (session) => wished.has(session.groupId), [view]);
}

function noticesOf(
  viewer: Viewer,
  isAsked: (session: GroupSession) => boolean,
  views: readonly (typeof VIEWS)[number][],
): readonly string[] {
  const asked = readGroupSessions(viewer.db, viewer.scope).filter(isAsked);
  const ids = [...new Set(asked.map((session) => session.groupId))].toReversed();
  if (ids.length === 0) return [];
  const rules = loadAcademyRules(viewer.db, viewer.scope, viewer.academy);
  return ids.flatMap((id) => {
    const sessions = asked.filter((session) => session.groupId === id);
    return jumpsOf(viewer, sessions, rules)
      .filter((jump) => views.includes(jump.view))
      .map((jump) => sayGroupJump(viewer.words, jump, sessions[0]?.day ?? viewer.today));
  });
}
