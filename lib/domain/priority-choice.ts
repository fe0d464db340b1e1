import type { ClubGroup } from "./club-group";

/** What a coach put in hand on a day against the order of work, or with it. */
export interface PriorityChoice {
  readonly id: number;
  readonly studentId: string;
  readonly clubGroup: ClubGroup;
  /** Null: the order of work chooses again. */
  readonly fundamentalId: string | null;
  readonly reason: string;
  /** Where the student is, `YYYY-MM-DD`. */
  readonly day: string;
  readonly who: string;
}

/**
 * The choice in force with one group of clubs.
 *
 * @param choices oldest first, of any students and clubs
 * @returns null where the order of work chooses
 */
export function choiceOf(
  choices: readonly PriorityChoice[],
  track: Pick<PriorityChoice, "studentId" | "clubGroup">,
): PriorityChoice | null {
  const latest = choices.findLast(
    ({ studentId, clubGroup }) => studentId === track.studentId && clubGroup === track.clubGroup,
  );
  return latest === undefined || latest.fundamentalId === null ? null : latest;
}
