import type { TrackVerdict } from "@/lib/domain/track-verdict";
import { SURE_THRESHOLDS } from "./sure-thresholds";

/** What of a verdict it rests on. */
export type SureVerdict = Pick<TrackVerdict, "listed"> & {
  /** Null: nothing is proved. */
  readonly change: object | null;
  readonly evidence: Pick<TrackVerdict["evidence"], "noChange">;
};

/**
 * Whether a change that stands on the roster's list has become doubtful: the word was earned on an earlier film and is kept
 * (SEASON.md 2), and the films since leave more room for nothing having happened than the list as a whole has.
 */
export function isLessSure({ listed, change, evidence }: SureVerdict): boolean {
  return listed === true && change !== null && evidence.noChange > SURE_THRESHOLDS.lessSure.value;
}
