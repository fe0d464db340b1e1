import type { ArchivedStudent } from "@/lib/domain/archive";
import type { ImportPlan } from "@/lib/domain/session-entry";
import type { ArchiveResult, FileResult, PlanPart } from "./file-tasks";

type Result = FileResult | ArchiveResult;

/** The plan with its parts; a task has parts of one kind. */
export function joined<Told extends Result>(result: Told, parts: readonly PlanPart[]): Told;
export function joined(result: Result, parts: readonly PlanPart[]): Result {
  if (result.kind === "plan" && result.preview.plan !== null) {
    const sessions = parts as ImportPlan["sessions"];
    return { ...result, preview: { ...result.preview, plan: { ...result.preview.plan, sessions } } };
  }
  if (result.kind === "archive" && result.plan !== null)
    return { ...result, plan: { ...result.plan, students: parts as readonly ArchivedStudent[] } };
  return result;
}
