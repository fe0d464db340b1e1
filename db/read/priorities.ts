import { asc, eq } from "drizzle-orm";
import type { ClubGroup } from "@/lib/domain/club-group";
import type { PriorityChoice } from "@/lib/domain/priority-choice";
import type { AcademyScope, StudentScope } from "@/lib/domain/scope";
import type { Database } from "../client";
import { student } from "../schema";
import { priorityChoice } from "../schema-plans";
import { within } from "./visible";

/** Everything that coaches put in hand, oldest first; the latest of a student and a group of clubs holds. */
export function readPriorities(db: Database, scope: AcademyScope | StudentScope): PriorityChoice[] {
  return db.orm
    .select({
      id: priorityChoice.id,
      studentId: priorityChoice.studentId,
      clubGroup: priorityChoice.clubGroup,
      fundamentalId: priorityChoice.fundamentalId,
      reason: priorityChoice.reason,
      day: priorityChoice.day,
      who: priorityChoice.who,
    })
    .from(priorityChoice)
    .innerJoin(student, eq(student.id, priorityChoice.studentId))
    .where(within(scope, priorityChoice.studentId))
    .orderBy(asc(priorityChoice.id))
    .all()
    .map((row) => ({ ...row, clubGroup: row.clubGroup as ClubGroup }));
}
