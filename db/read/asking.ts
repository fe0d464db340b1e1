import { asc, eq } from "drizzle-orm";
import { type Asking, parseTakenPlan } from "@/lib/domain/asking";
import type { ClubGroup } from "@/lib/domain/club-group";
import type { AcademyScope, StudentScope } from "@/lib/domain/scope";
import type { Database } from "../client";
import { student } from "../schema";
import { asking } from "../schema-work";
import { within } from "./visible";

/** Every decision on a track's question, oldest first. */
export function readAskings(db: Database, scope: AcademyScope | StudentScope): Asking[] {
  return db.orm
    .select({
      studentId: asking.studentId,
      fundamentalId: asking.fundamentalId,
      clubGroup: asking.clubGroup,
      state: asking.state,
      day: asking.day,
      who: asking.who,
      plan: asking.plan,
    })
    .from(asking)
    .innerJoin(student, eq(student.id, asking.studentId))
    .where(within(scope, asking.studentId))
    .orderBy(asc(asking.id))
    .all()
    .map(({ plan, clubGroup, ...row }) => ({
      ...row,
      clubGroup: clubGroup as ClubGroup,
      plan: plan === null ? null : parseTakenPlan(plan),
    }));
}
