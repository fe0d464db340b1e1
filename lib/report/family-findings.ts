import { daysBetween } from "@/lib/domain/calendar-day";
import { ownAgeDay } from "@/lib/domain/consent";
import type { Student } from "@/lib/domain/student";
import type { Told } from "@/lib/domain/told";
import type { TrackVerdict } from "@/lib/domain/track-verdict";
import { FAMILY_THRESHOLDS } from "@/lib/verdict/family-thresholds";
import { isLessSure } from "@/lib/verdict/is-less-sure";
import type { TrackHistory } from "@/lib/verdict/track-history";
import type { Words } from "@/lib/words/catalogue";
import { type FamilyFinding, sayFamily } from "@/lib/words/say-family";
import { sayFamilyPart } from "@/lib/words/say-family-part";
import { familyCorrection } from "./family-correction";
import { provedAlone, saidGlyph } from "./said";

/** A track as a family's page needs it, in the order of work. */
export interface FamilyTrack {
  readonly history: Pick<TrackHistory, "fundamental" | "sessions">;
  readonly verdict: TrackVerdict;
}

/** The sentences on what is measured, by the part of the page in which they stand. */
export interface FamilySentences {
  readonly good: readonly string[];
  readonly changed: readonly string[];
  readonly unsure: readonly string[];
  /** Further things that can't be told yet. */
  readonly more: number;
}

type Place = "good" | "changed" | "unsure";

const PLACES: Readonly<Record<FamilyFinding["kind"], Place>> = {
  ...{ good: "good", better: "changed", worse: "changed", within: "changed", through: "changed" },
  ...{
    corrected: "changed",
    elsewhere: "changed",
    same: "changed",
    "checking-better": "unsure",
    checking: "unsure",
    open: "unsure",
  },
};

/** What is told first to a reader who is told little. */
const RANK: readonly FamilyFinding["kind"][] = ["better", "good", "checking-better", "open"];

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

/** What a family is told of everything that is measured. */
export function familyFindings(
  words: Words,
  tracks: readonly FamilyTrack[],
  {
    student,
    today,
    openings = [],
    told = [],
  }: {
    readonly student: Pick<Student, "hand" | "birthYear">;
    readonly today: string;
    /** Days on which the link was opened. */
    readonly openings?: readonly string[];
    /** What the family was told with the clubs of the tracks, in the order in which it was. */
    readonly told?: readonly Told[];
  },
): FamilySentences {
  const reader = familyReader(student, today);
  const all = tracks.map((track) => ({ track, finding: findingOf(track, today) }));
  const { youngMost, unsureMost } = FAMILY_THRESHOLDS;
  const shown =
    reader === "young"
      ? all
          .filter(({ finding }) => RANK.includes(finding.kind))
          .sort((a, b) => RANK.indexOf(a.finding.kind) - RANK.indexOf(b.finding.kind))
          .slice(0, youngMost.value)
      : all;
  const say = (track: FamilyTrack, finding: FamilyFinding): string =>
    sayFamily(words, finding, { of: sayFamilyPart(words, track.history.fundamental, student.hand), reader, today });
  const of = (place: Place): string[] =>
    shown.filter(({ finding }) => PLACES[finding.kind] === place).map(({ track, finding }) => say(track, finding));
  // What was said is taken back whoever reads, beside what else is told.
  const corrected = tracks.flatMap((track) => {
    const correction = familyCorrection(
      track.verdict,
      { openings, told },
      { fundamentalId: track.history.fundamental.id, today },
    );
    const said = correction === null ? "" : say(track, correction);
    return said === "" ? [] : [said];
  });
  const unsure = of("unsure");
  return {
    good: of("good"),
    changed: [...corrected, ...of("changed")],
    unsure: unsure.slice(0, unsureMost.value),
    more: Math.max(0, unsure.length - unsureMost.value),
  };
}

/** For whom a page is written: the youngest without numbers and slips, until by the year of birth they have surely reached the age. */
export function familyReader({ birthYear }: Pick<Student, "birthYear">, today: string): "young" | "other" {
  const reached = ownAgeDay({ birthYear, ownConsentAge: FAMILY_THRESHOLDS.youngAge.value });
  return reached !== null && today < reached ? "young" : "other";
}
