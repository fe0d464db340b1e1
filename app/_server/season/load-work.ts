import { readEventLog } from "@/db/read/events";
import { readSaidPain } from "@/db/read/practice";
import { readPriorities } from "@/db/read/priorities";
import type { ClubGroup } from "@/lib/domain/club-group";
import { choiceOf, type PriorityChoice } from "@/lib/domain/priority-choice";
import type { WorkFacts } from "@/lib/report/order-of-work";
import { workStop } from "@/lib/verdict/work-stop";
import { type StudentViewer, seesPain } from "../gate";
import { loadAsked } from "../plan/load-asked";

/** What decides of a student's work beside what was measured. */
export interface StudentWork {
  readonly work: WorkFacts;
  /** In force with the clubs; null: the order of work chooses. */
  readonly choice: PriorityChoice | null;
  /** Every choice with them, oldest first. */
  readonly choices: readonly PriorityChoice[];
}

/**
 * What decides of a student's work with a group of clubs beside what was measured.
 *
 * @param pain `said`: on a page, to whoever may know it; `left-out`: in what is printed or handed on, where a pause tells its days
 */
export function loadStudentWork(
  viewer: StudentViewer,
  clubGroup: ClubGroup | null,
  pain: "said" | "left-out",
): StudentWork {
  const { db, student, today } = viewer;
  const proof = pain === "said" ? seesPain(viewer, student) : null;
  const choices = readPriorities(db, student).filter((choice) => choice.clubGroup === clubGroup);
  const choice = clubGroup === null ? null : choiceOf(choices, { studentId: student.studentId, clubGroup });
  const events = readEventLog(db, student, proof).filter(({ voidedAt }) => voidedAt === null);
  const said = proof === null ? [] : readSaidPain(db, proof);
  return {
    work: {
      stop: workStop({ said, events }, today),
      chosenId: choice?.fundamentalId ?? null,
      asked: loadAsked(viewer),
    },
    choice,
    choices,
  };
}
