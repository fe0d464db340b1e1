import type { TrackVerdict } from "@/lib/domain/track-verdict";
import { provedAlone, saidGlyph } from "./said";

/** What a session did to what is said of one track; the order is that of importance. */
export const VERDICT_STEPS = [
  "slip",
  "gain",
  "moved",
  "watch",
  "owned-lost",
  "said-no-more",
  "steady",
  "steady-no-more",
  "alone",
  "alone-no-more",
  "owned",
  "watch-over",
  "position",
  "first",
] as const;

/** One of them. */
export type VerdictStep = (typeof VERDICT_STEPS)[number];

/**
 * What changed between two verdicts of one track, the most important first; nothing: it says what it said.
 *
 * A gain, a slip or a move is one only while its track stands on the roster's list; a change that is proved for its track
 * alone is a step of its own.
 *
 * @param before the verdict without the session; null: the track began with it
 */
export function verdictSteps(before: TrackVerdict | null, after: TrackVerdict): readonly VerdictStep[] {
  if (before === null) return ["first"];
  const steps = new Set<VerdictStep>();
  const [was, is] = [saidGlyph(before), saidGlyph(after)];
  const again = is === was && is !== "open" && is !== "steady" && before.changes.length < after.changes.length;
  if (was !== is || again) {
    if (is !== "open") steps.add(is);
    else steps.add(was === "steady" ? "steady-no-more" : "said-no-more");
  }
  const [wasAlone, isAlone] = [provedAlone(before), provedAlone(after)];
  if (isAlone === "alone" && wasAlone === "no") steps.add("alone");
  if (isAlone === "no" && wasAlone === "alone" && is === "open") steps.add("alone-no-more");
  if (after.watch !== null && before.watch?.sessions !== after.watch.sessions) steps.add("watch");
  if (after.watch === null && before.watch !== null) steps.add("watch-over");
  if (before.ownedSince === null && after.ownedSince !== null) steps.add("owned");
  if (before.ownedSince !== null && after.ownedSince === null) steps.add("owned-lost");
  if (before.position !== after.position && after.position !== null) steps.add("position");
  return VERDICT_STEPS.filter((step) => steps.has(step));
}
