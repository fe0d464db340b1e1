import type { TrackVerdict } from "@/lib/domain/track-verdict";
import { provedAlone } from "./said";

/** Why a track isn't settled, in the order in which they are told. */
export const OPEN_WHYS = ["alone", "not-told-apart", "few", "plan", "no-plan"] as const;

/** Why a track isn't settled. */
export type OpenWhy = (typeof OPEN_WHYS)[number];

/**
 * Why an open track isn't settled: proved by itself and not on the roster's list; moved together with its reader or camera; too
 * few films for a first answer; films that would settle it; or no plan that would.
 */
export function openWhy(
  verdict: Pick<TrackVerdict, "notToldApart" | "settle" | "change" | "listed" | "verdict" | "moved">,
): OpenWhy {
  if (provedAlone(verdict) === "alone") return "alone";
  if (verdict.notToldApart !== null) return "not-told-apart";
  const { settle } = verdict;
  if (settle === null) return "no-plan";
  if (!("none" in settle)) return "plan";
  return settle.none === "first-look" ? "few" : settle.none;
}
