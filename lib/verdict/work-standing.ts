import type { Fundamental } from "@/lib/domain/fundamental";
import type { TrackVerdict } from "@/lib/domain/track-verdict";

/** What the order of work asks of a verdict. */
export type WorkVerdict = Pick<
  TrackVerdict,
  "verdict" | "listed" | "moved" | "position" | "levelNow" | "ownedSince" | "watch"
>;

/** One fundamental of a student as the order of work looks at it. */
export interface WorkItem {
  readonly fundamental: Pick<Fundamental, "id" | "phase" | "order">;
  /** Null: there is no reading of it with these clubs. */
  readonly verdict: WorkVerdict | null;
  /** How often a film of it was asked for and has not come. */
  readonly askedFor: number;
  /** Day of the last film that it was read from; null: none. */
  readonly lastDay: string | null;
}

/** Where a fundamental stands for the order of work. */
export type WorkStanding = "unmeasured" | "slipped" | "outside" | "doubt" | "inside" | "owned" | "no-goal";

/**
 * Where a fundamental stands for the order of work.
 *
 * `slipped` is said only of what stands on the roster’s list and isn’t inside its band again; `owned` holds whatever the last
 * level is, since only a proved slip ends it; `inside` and `outside` count the whole interval of 95 of 100; `doubt` lies between;
 * a track whose films all don’t count is as good as unmeasured; without a goal nothing can be said.
 */
export function workStanding({ verdict }: Pick<WorkItem, "verdict">): WorkStanding {
  if (verdict === null || verdict.levelNow === null) return "unmeasured";
  const { position } = verdict;
  const isSlip = verdict.verdict === "slip" && verdict.listed === true && verdict.moved === null;
  if (isSlip && position !== "inside" && position !== null) return "slipped";
  if (verdict.ownedSince !== null) return "owned";
  if (position === null) return "no-goal";
  return position === "edge" ? "doubt" : position;
}
