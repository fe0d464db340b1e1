import type { Session } from "@/lib/domain/session";
import type { Student } from "@/lib/domain/student";

/** Everything that the part on contact rests on. */
export interface ContactSource {
  readonly student: Student;
  readonly sessions: readonly Session[];
  /** The club group shown; null: none. */
  readonly clubGroup: string | null;
  readonly seasonStart: string;
  /** First and last day of the time axis that the season's charts share. */
  readonly from: string;
  readonly asOf: string;
}
