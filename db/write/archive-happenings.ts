import type { ArchivedStudent } from "@/lib/domain/archive";
import type { Database } from "../client";
import { practice, rebaselineChange } from "../schema-entry";
import { drillDecision, filmPlan, priorityChoice } from "../schema-plans";
import { drillAssignment, event } from "../schema-work";

interface Work {
  readonly db: Database;
  readonly batchId: string;
  readonly freeId: (table: "event" | "drill_assignment" | "practice" | "film_plan", id: string) => string;
  readonly drills: ReadonlyMap<string, string>;
}

/** The id here of what the archive names. */
export function requireId(ids: ReadonlyMap<string, string>, id: string): string {
  const found = ids.get(id);
  if (found === undefined) throw new RangeError(`the archive names ${id} and doesn't hold it`);
  return found;
}

/** Events, drills and practice of a student. */
export function enterArchivedHappenings(
  { db, batchId, freeId, drills }: Work,
  studentId: string,
  archived: ArchivedStudent,
): void {
  const { orm } = db;
  for (const { changes, ...facts } of archived.events) {
    const id = freeId("event", facts.id);
    orm
      .insert(event)
      .values({ ...facts, id, studentId, batchId })
      .run();
    for (const change of changes)
      orm
        .insert(rebaselineChange)
        .values({ ...change, eventId: id })
        .run();
  }
  const assignments = new Map<string, string>();
  for (const { decisions, ...facts } of archived.assignments) {
    const id = freeId("drill_assignment", facts.id);
    assignments.set(facts.id, id);
    const drillId = requireId(drills, facts.drillId);
    orm
      .insert(drillAssignment)
      .values({ ...facts, id, drillId, studentId, batchId })
      .run();
    for (const row of decisions)
      orm
        .insert(drillDecision)
        .values({ ...row, assignmentId: id })
        .run();
  }
  for (const facts of archived.practice) {
    const assignmentId = facts.assignmentId === null ? null : requireId(assignments, facts.assignmentId);
    orm
      .insert(practice)
      .values({ ...facts, id: freeId("practice", facts.id), assignmentId, studentId, batchId })
      .run();
  }
}

/** What was put in hand against the order of work, and what the family was told to film. */
export function enterArchivedPlans(
  { db: { orm }, freeId }: Pick<Work, "db" | "freeId">,
  studentId: string,
  archived: ArchivedStudent,
): void {
  for (const row of archived.priorities)
    orm
      .insert(priorityChoice)
      .values({ ...row, studentId })
      .run();
  for (const row of archived.filmPlans)
    orm
      .insert(filmPlan)
      .values({ ...row, id: freeId("film_plan", row.id), studentId })
      .run();
}
