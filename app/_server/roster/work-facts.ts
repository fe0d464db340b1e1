import { readPauses } from "@/db/read/pauses";
import { readSaidPainDays } from "@/db/read/practice";
import { readPriorities } from "@/db/read/priorities";
import type { ClubGroup } from "@/lib/domain/club-group";
import type { Fundamental } from "@/lib/domain/fundamental";
import { choiceOf, type PriorityChoice } from "@/lib/domain/priority-choice";
import type { StudentEvent } from "@/lib/domain/student";
import type { WorkFacts } from "@/lib/report/order-of-work";
import { workStop } from "@/lib/verdict/work-stop";
import { seesPainOf, type Viewer } from "../gate";
import { loadAskedOfAll } from "./load-asked-of-all";

/** What decides of the one in hand beside what was measured, of a student with a group of clubs. */
export type WorkFactsOf = (studentId: string, clubGroup: ClubGroup | null) => WorkFacts;

function grouped<T>(rows: readonly T[], idOf: (row: T) => string): ReadonlyMap<string, readonly T[]> {
  const by = new Map<string, T[]>();
  for (const row of rows) {
    const kept = by.get(idOf(row));
    if (kept) kept.push(row);
    else by.set(idOf(row), [row]);
  }
  return by;
}

/**
 * What decides of the one in hand beside what was measured, of everybody whom the viewer may see: what their coaches chose, and
 * what stops the work. Pain that was said is read of those alone whose pain the viewer may know; a pause tells its days.
 */
export function loadWorkFacts(viewer: Viewer, fundamentals: readonly Fundamental[]): WorkFactsOf {
  const { db, scope, today } = viewer;
  const choices = grouped<PriorityChoice>(readPriorities(db, scope), ({ studentId }) => studentId);
  const pauses = grouped(readPauses(db, scope, today), ({ studentId }) => studentId);
  const said = grouped(readSaidPainDays(db, seesPainOf(viewer)), ({ studentId }) => studentId);
  const asked = loadAskedOfAll(viewer, fundamentals);
  return (studentId, clubGroup) => {
    const events = (pauses.get(studentId) ?? []).map(
      ({ day, endDay }): Pick<StudentEvent, "kind" | "day" | "endDay"> => ({ kind: "pause", day, endDay }),
    );
    const chosen = clubGroup === null ? null : choiceOf(choices.get(studentId) ?? [], { studentId, clubGroup });
    return {
      stop: workStop({ said: said.get(studentId) ?? [], events }, today),
      chosenId: chosen?.fundamentalId ?? null,
      asked: asked(studentId),
    };
  };
}
