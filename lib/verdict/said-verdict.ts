import type { TrackVerdict, Verdict } from "@/lib/domain/track-verdict";

/**
 * What is said of a track: its verdict, but gain and slip only of a track on the roster's list; else not settled.
 */
export function saidVerdict({ verdict, listed }: Pick<TrackVerdict, "verdict" | "listed">): Verdict {
  if (verdict !== "gain" && verdict !== "slip") return verdict;
  return listed === true ? verdict : "open";
}
