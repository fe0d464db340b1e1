import { and, eq } from "drizzle-orm";
import {
  type FairAllocation,
  type FairStep,
  type FairTest,
  type FairValue,
  fairFiguresText,
  isRunning,
} from "@/lib/domain/fair-test";
import type { AcademyScope, StudentScope } from "@/lib/domain/scope";
import { type Database, inTransaction } from "../client";
import { readFairAllocations, readFairSteps, readFairTests } from "../read/fair-tests";
import { fairAllocation, fairStep, fairTest, fairValue } from "../schema-plans";
import { drill } from "../schema-work";

/** Plans a test. `unknown-drill`: one of the two is not in the academy's library; nothing was written. */
export function insertFairTest(
  db: Database,
  { academyId }: AcademyScope,
  test: FairTest,
): { readonly kind: "inserted" | "unknown-drill" } {
  return inTransaction(db, () => {
    for (const id of [test.firstDrillId, test.secondDrillId])
      if (
        !db.orm
          .select({ id: drill.id })
          .from(drill)
          .where(and(eq(drill.id, id), eq(drill.academyId, academyId)))
          .get()
      )
        return { kind: "unknown-drill" };
    db.orm
      .insert(fairTest)
      .values({ ...test, academyId })
      .run();
    return { kind: "inserted" };
  });
}

/** Why nothing was drawn. */
export type DrawInsert =
  | { readonly kind: "drawn"; readonly draw: FairAllocation }
  | { readonly kind: "over" | "drawn-before" };

/**
 * Draws for a student: the next place of the coach's order, found and taken in one transaction, so that no two students get one
 * place.
 *
 * @param armAt the arm at a place of that order
 * @returns `over`: the test has ended or has all its students; `drawn-before`: the student has drawn in it; nothing was written
 */
export function insertFairAllocation(
  db: Database,
  { academyId, studentId }: StudentScope,
  test: FairTest,
  draw: Omit<FairAllocation, "testId" | "studentId" | "place" | "arm">,
  armAt: (place: number) => FairAllocation["arm"],
): DrawInsert {
  return inTransaction(db, () => {
    const draws = readFairAllocations(db, test);
    const mine = draws.find((each) => each.studentId === studentId);
    if (mine) return { kind: "drawn-before" };
    const own = db.orm
      .select({ id: fairTest.id })
      .from(fairTest)
      .where(and(eq(fairTest.id, test.id), eq(fairTest.academyId, academyId)))
      .get();
    if (!own || draws.length >= test.students || !isRunning(test, readFairSteps(db, test))) return { kind: "over" };
    const place = draws.reduce(
      (next, each) => (each.coachId === draw.coachId ? Math.max(next, each.place + 1) : next),
      0,
    );
    const row = { ...draw, testId: test.id, studentId, place, arm: armAt(place) };
    db.orm.insert(fairAllocation).values(row).run();
    return { kind: "drawn", draw: row };
  });
}

/** Keeps a look or the end, with what the look found anew. `over`: the test has ended, or that step is there; nothing was written. */
export function insertFairStep(
  db: Database,
  scope: AcademyScope,
  test: FairTest,
  step: FairStep,
  values: readonly FairValue[],
): { readonly kind: "inserted" | "over" } {
  return inTransaction(db, () => {
    const steps = readFairSteps(db, test);
    const known = readFairTests(db, scope).some(({ id }) => id === test.id);
    if (!known || steps.length !== step.number - 1 || !isRunning(test, steps)) return { kind: "over" };
    const figures = step.figures === null ? null : fairFiguresText(step.figures);
    db.orm
      .insert(fairStep)
      .values({ ...step, testId: test.id, figures })
      .run();
    for (const value of values) db.orm.insert(fairValue).values(value).run();
    return { kind: "inserted" };
  });
}
