import { and, eq } from "drizzle-orm";
import type { ClubGroup } from "@/lib/domain/club-group";
import { type ClubGrouping, groupNow } from "@/lib/domain/club-grouping";
import type { ClubChange, Regrouping } from "@/lib/domain/regroup-clubs";
import type { AcademyScope } from "@/lib/domain/scope";
import { type Database, inTransaction } from "../client";
import { joinWords } from "../joined-words";
import { readGroupUse, readRegroupings } from "../read/club-groups";
import { clubRegrouping, goalBand } from "../schema-work";
import type { Stamp } from "./students";

/** A change of the club groups that is ready to be recorded. */
export interface NewRegrouping {
  readonly kind: ClubChange;
  readonly change: Extract<Regrouping, { readonly kind: "ok" }>;
  readonly day: string;
  readonly who: string;
  readonly why: string;
}

/** `in-use`: groups are laid out anew only before the first session; nothing was written. */
export type RegroupingInsert =
  | { readonly kind: "recorded"; readonly number: number; readonly sessions: number; readonly students: number }
  | { readonly kind: "in-use"; readonly sessions: number };

interface PlacedSession {
  readonly id: string;
  readonly studentId: string;
  readonly said: ClubGroup;
  readonly club: string | null;
  readonly clubGroup: ClubGroup;
}

/** Puts every session into the group that it belongs to now; students whose sessions moved are to be judged anew. */
function moveSessions(db: Database, scope: AcademyScope, grouping: ClubGrouping) {
  const placed = db.sqlite
    .prepare<[string], PlacedSession>(
      `SELECT session.id, student_id AS studentId, said_club_group AS said, club, club_group AS clubGroup
       FROM session JOIN student ON student.id = session.student_id WHERE student.academy_id = ?`,
    )
    .all(scope.academyId);
  const move = db.sqlite.prepare<[ClubGroup, string]>("UPDATE session SET club_group = ? WHERE id = ?");
  const bump = db.sqlite.prepare<[string]>("UPDATE student SET revision = revision + 1 WHERE id = ?");
  const students = new Set<string>();
  let sessions = 0;
  for (const { id, studentId, said, club, clubGroup } of placed) {
    const now = groupNow(grouping, said, club);
    if (now === clubGroup) continue;
    sessions += move.run(now, id).changes;
    students.add(studentId);
  }
  for (const studentId of students) bump.run(studentId);
  return { sessions, students: students.size };
}

/** Goals that the academy set for a group hold for the groups that come from it, from the same days on. */
function copyGoals(db: Database, scope: AcademyScope, { goalsFrom }: NewRegrouping["change"], stamp: Stamp): void {
  const of = (group: ClubGroup) => and(eq(goalBand.academyId, scope.academyId), eq(goalBand.clubGroup, group));
  for (const { group, from } of goalsFrom) {
    if (group === from || db.orm.select().from(goalBand).where(of(group)).get()) continue;
    for (const band of db.orm.select().from(goalBand).where(of(from)).all())
      db.orm
        .insert(goalBand)
        .values({ ...band, id: stamp.newId(), clubGroup: group })
        .run();
  }
}

/**
 * Records a change of the club groups and moves every session that it concerns, whole or not at all. What was said of a
 * session stays; looks said in the old group keep their noise models there.
 */
export function insertRegrouping(
  db: Database,
  scope: AcademyScope,
  { kind, change, day, who, why }: NewRegrouping,
  stamp: Stamp,
): RegroupingInsert {
  return inTransaction(db, () => {
    const inUse = readGroupUse(db, scope).reduce((sum, group) => sum + group.sessions, 0);
    if (kind === "arrange" && inUse > 0) return { kind: "in-use", sessions: inUse };
    const number = (readRegroupings(db, scope).at(-1)?.number ?? 0) + 1;
    copyGoals(db, scope, change, stamp);
    const moved = moveSessions(db, scope, change.grouping);
    db.orm
      .insert(clubRegrouping)
      .values({
        academyId: scope.academyId,
        number,
        kind,
        fromGroups: joinWords(change.from),
        toGroups: joinWords(change.to),
        sessions: moved.sessions,
        day,
        who,
        why,
        grouping: JSON.stringify(change.grouping),
        recordedAt: stamp.now,
      })
      .run();
    return { kind: "recorded", number, ...moved };
  });
}
