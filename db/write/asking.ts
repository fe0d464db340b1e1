import { type Asking, askingOf } from "@/lib/domain/asking";
import type { StudentScope } from "@/lib/domain/scope";
import { type Database, inTransaction } from "../client";
import { readAskings } from "../read/asking";
import { asking } from "../schema-work";

/**
 * Adds a decision on a track's question; earlier ones stay as its history. It is no evidence: analyses rest on the same
 * data as before.
 *
 * @returns `unchanged` where the question stood so already: nothing was written
 */
export function insertAsking(
  db: Database,
  scope: StudentScope,
  decided: Omit<Asking, "studentId">,
  recordedAt: string,
): "recorded" | "unchanged" {
  return inTransaction(db, () => {
    const { studentId } = scope;
    const { plan, ...fields } = decided;
    const before = askingOf(readAskings(db, scope), { studentId, ...fields });
    if (fields.state !== "planned" && (before?.state ?? "asked") === fields.state) return "unchanged";
    db.orm
      .insert(asking)
      .values({ studentId, ...fields, plan: plan === null ? null : JSON.stringify(plan), recordedAt })
      .run();
    return "recorded";
  });
}
