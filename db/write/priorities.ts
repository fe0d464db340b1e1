import { choiceOf, type PriorityChoice } from "@/lib/domain/priority-choice";
import type { StudentScope } from "@/lib/domain/scope";
import { type Database, inTransaction } from "../client";
import { readPriorities } from "../read/priorities";
import { priorityChoice } from "../schema-plans";

/**
 * Puts a fundamental in hand, or lets the order of work choose again; earlier rows stay as the history. It is no evidence:
 * analyses rest on the same data as before.
 *
 * @returns `unchanged` where the order of work chooses already: nothing was written
 */
export function insertPriority(
  db: Database,
  scope: StudentScope,
  chosen: Omit<PriorityChoice, "id" | "studentId">,
  recordedAt: string,
): "recorded" | "unchanged" {
  return inTransaction(db, () => {
    const { studentId } = scope;
    const before = choiceOf(readPriorities(db, scope), { studentId, ...chosen });
    if (chosen.fundamentalId === null && before === null) return "unchanged";
    db.orm
      .insert(priorityChoice)
      .values({ studentId, ...chosen, recordedAt })
      .run();
    return "recorded";
  });
}
