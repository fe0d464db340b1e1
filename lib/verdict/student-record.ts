import type { Fundamental } from "@/lib/domain/fundamental";
import type { GoalBand } from "@/lib/domain/goal-band";
import type { DatedOwningRule } from "@/lib/domain/owning-rule";
import type { MeasuredReaderError } from "@/lib/domain/reread";
import type { Capture, Reading, Session } from "@/lib/domain/session";
import type { Student, StudentEvent } from "@/lib/domain/student";

/** Everything on file of one student that a verdict may rest on. */
export interface StudentRecord {
  readonly student: Student;
  /** Date order; sessions of one day in their sequence. */
  readonly sessions: readonly Session[];
  readonly captures: readonly (Omit<Capture, "statedSd"> & { readonly sessionId: string })[];
  readonly statedCaptureSds: readonly {
    readonly sessionId: string;
    readonly fundamentalId: string;
    readonly sd: number;
  }[];
  /** In force: one a swing and fundamental. */
  readonly readings: readonly Reading[];
  readonly events: readonly StudentEvent[];
  /** Dated bands of the academy; built-in ones come from the catalogue. */
  readonly bands: readonly GoalBand[];
  readonly lookNoise: readonly {
    readonly sessionId: string;
    readonly fundamentalId: string;
    /** The club group in which the look was said. */
    readonly clubGroup: string;
    readonly noiseModelName: string;
  }[];
  readonly fundamentals: readonly Fundamental[];
  /** Fitted errors of the academy's readers; absent: none was measured. */
  readonly readerErrors?: readonly MeasuredReaderError[];
  /** The academy's owning rules, in the order of entry; absent: the built-in one. */
  readonly owningRules?: readonly DatedOwningRule[];
  /** First day of the season; tracks begin there at the earliest. */
  readonly seasonStart: string;
}
