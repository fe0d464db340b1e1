import { and, asc, eq, inArray } from "drizzle-orm";
import type { ClubGroup } from "@/lib/domain/club-group";
import {
  type Arm,
  type FairAllocation,
  type FairStep,
  type FairTest,
  type FairValue,
  parseFairFigures,
} from "@/lib/domain/fair-test";
import type { AcademyScope, StudentScope } from "@/lib/domain/scope";
import type { Database } from "../client";
import { fairAllocation, fairStep, fairTest, fairValue } from "../schema-plans";

/** Every test by the lot of an academy, the latest first. */
export function readFairTests(db: Database, { academyId }: AcademyScope): FairTest[] {
  return db.orm
    .select({
      ...{ id: fairTest.id, fundamentalId: fairTest.fundamentalId },
      ...{ firstDrillId: fairTest.firstDrillId, secondDrillId: fairTest.secondDrillId },
      ...{ least: fairTest.least, spread: fairTest.spread, students: fairTest.students },
      ...{ looks: fairTest.looks, days: fairTest.days, seed: fairTest.seed },
      ...{ day: fairTest.day, who: fairTest.who, recordedAt: fairTest.recordedAt },
    })
    .from(fairTest)
    .where(eq(fairTest.academyId, academyId))
    .orderBy(asc(fairTest.recordedAt), asc(fairTest.id))
    .all()
    .reverse();
}

/** One test's looks and its end, in order. */
export function readFairSteps(db: Database, { id }: Pick<FairTest, "id">): FairStep[] {
  return db.orm
    .select({
      ...{ number: fairStep.number, kind: fairStep.kind, figures: fairStep.figures, why: fairStep.why },
      ...{ day: fairStep.day, who: fairStep.who, recordedAt: fairStep.recordedAt },
    })
    .from(fairStep)
    .where(eq(fairStep.testId, id))
    .orderBy(asc(fairStep.number))
    .all()
    .map((row) => ({ ...row, figures: row.figures === null ? null : parseFairFigures(row.figures) }));
}

/**
 * What was drawn in a test, of the whole academy and in the order of drawing: the lot's next place rests on all of it. Whoever
 * shows it cuts it to the students whom the viewer may see.
 */
export function readFairAllocations(db: Database, { id }: Pick<FairTest, "id">): FairAllocation[] {
  return db.orm
    .select({
      ...{
        id: fairAllocation.id,
        testId: fairAllocation.testId,
        studentId: fairAllocation.studentId,
        clubGroup: fairAllocation.clubGroup,
      },
      ...{ coachId: fairAllocation.coachId, place: fairAllocation.place, arm: fairAllocation.arm },
      ...{ day: fairAllocation.day, who: fairAllocation.who, recordedAt: fairAllocation.recordedAt },
    })
    .from(fairAllocation)
    .where(eq(fairAllocation.testId, id))
    .orderBy(asc(fairAllocation.recordedAt), asc(fairAllocation.place), asc(fairAllocation.id))
    .all()
    .map((row) => ({ ...row, clubGroup: row.clubGroup as ClubGroup, arm: row.arm as Arm }));
}

/** What one student drew in any test: the day, and the id of the drill that the lot said. */
export function readStudentDraws(
  db: Database,
  { studentId, academyId }: StudentScope,
): { readonly day: string; readonly drillId: string }[] {
  return db.orm
    .select({
      ...{ day: fairAllocation.day, arm: fairAllocation.arm },
      ...{ first: fairTest.firstDrillId, second: fairTest.secondDrillId },
    })
    .from(fairAllocation)
    .innerJoin(fairTest, eq(fairTest.id, fairAllocation.testId))
    .where(and(eq(fairAllocation.studentId, studentId), eq(fairTest.academyId, academyId)))
    .all()
    .map(({ day, arm, first, second }) => ({ day, drillId: arm === 0 ? first : second }));
}

/** What the looks at a test found of its draws. */
export function readFairValues(db: Database, { id }: Pick<FairTest, "id">): FairValue[] {
  const draws = db.orm.select({ id: fairAllocation.id }).from(fairAllocation).where(eq(fairAllocation.testId, id));
  return db.orm
    .select({ allocationId: fairValue.allocationId, look: fairValue.look, value: fairValue.value })
    .from(fairValue)
    .where(inArray(fairValue.allocationId, draws))
    .orderBy(asc(fairValue.look), asc(fairValue.allocationId))
    .all();
}
