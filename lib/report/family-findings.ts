import { daysBetween } from "@/lib/domain/calendar-day";
import { ownAgeDay } from "@/lib/domain/consent";
import type { Student } from "@/lib/domain/student";
import type { TrackVerdict } from "@/lib/domain/track-verdict";
import { FAMILY_THRESHOLDS } from "@/lib/verdict/family-thresholds";
import { isLessSure } from "@/lib/verdict/is-less-sure";
import type { TrackHistory } from "@/lib/verdict/track-history";
import type { FamilyFinding } from "@/lib/words/say-family";
import { provedAlone, saidGlyph } from "./said";

/** A track as a family's page needs it, in the order of work. */
export interface FamilyTrack {
  readonly history: Pick<TrackHistory, "fundamental" | "sessions">;
  readonly verdict: TrackVerdict;
}

/** The last used session before a proved change; its own first day where there is none. */
export function dayBefore({ history, verdict }: FamilyTrack): string {
  const from = verdict.change?.from ?? "";
  const used = history.sessions.filter(({ apart, session }) => apart === null && session.day < from);
  return used.at(-1)?.session.day ?? from;
}

function planned({ settleIfReal }: TrackVerdict): number | null {
  return settleIfReal !== null && "sessions" in settleIfReal ? settleIfReal.sessions : null;
}

/** What of a track may be told: a change only where it stands on the roster's list (SEASON.md 19). */
export function findingOf(track: FamilyTrack, today: string): FamilyFinding {
  const { history, verdict } = track;
  const glyph = saidGlyph(verdict);
  // A change that later films leave doubtful keeps its word for the coach; a family reads that it is being checked.
  if (provedAlone(verdict) === "alone" || isLessSure(verdict))
    return { kind: verdict.change?.verdict === "gain" ? "checking-better" : "checking" };
  if (glyph === "gain") return { kind: "better", before: dayBefore(track) };
  if (glyph === "slip") return { kind: "worse", before: dayBefore(track) };
  if (glyph === "moved") return { kind: verdict.moved ?? "elsewhere" };
  if (glyph === "open") return { kind: "open", videos: planned(verdict) };
  // An early alarm is for the coach alone: it is no proof, and nothing is praised over it.
  if (verdict.ownedSince !== null && verdict.watch === null)
    return { kind: "good", weeks: Math.max(0, Math.floor(daysBetween(verdict.ownedSince, today) / 7)) };
  return { kind: "same", videos: history.sessions.filter(({ apart }) => apart === null).length };
}

/** For whom a page is written: the youngest without numbers and slips, until by the year of birth they have surely reached the age. */
export function familyReader({ birthYear }: Pick<Student, "birthYear">, today: string): "young" | "other" {
  const reached = ownAgeDay({ birthYear, ownConsentAge: FAMILY_THRESHOLDS.youngAge.value });
  return reached !== null && today < reached ? "young" : "other";
}
