import type { Fundamental } from "@/lib/domain/fundamental";
import type { AcademyGroup, AcademyGroups } from "./academy-groups";
import type { ComparedDrillsPage } from "./compared-drills-model";
import type { TrackSummary } from "./track-summary";

/** Days of a drill that was given for the fundamental; no end: it runs. */
export interface GivenStretch {
  readonly start: string;
  readonly end: string | null;
}

/** What the page of one fundamental across an academy rests on. */
export interface SpreadSource {
  readonly fundamental: Fundamental;
  readonly today: string;
  /** The first day of the season, or of the first film where that is later. */
  readonly from: string;
  /** Students who are here, measured or not. */
  readonly here: number;
  /** Of whom it is measured; null: fewer than five. */
  readonly groups: AcademyGroups | null;
  /** The group in force; null: everybody. */
  readonly group: AcademyGroup | null;
  /** Of this fundamental, cut to the group in force. */
  readonly tracks: readonly TrackSummary[];
  /** How a group of clubs is called. */
  readonly sayClubs: (clubGroup: string) => string;
  /** The comparison of its drills, over everybody. */
  readonly compared: Pick<ComparedDrillsPage, "lede" | "clubs" | "proved" | "evidence">;
  /** The drills that a student was given for it. */
  readonly givenTo: (studentId: string) => readonly GivenStretch[];
}

/** The way to the page of one fundamental across the academy, cut to a group. */
export function spreadHref(fundamentalId: string, group: Pick<AcademyGroup, "id"> | null = null): string {
  const of = group === null ? "" : `?of=${encodeURIComponent(group.id)}`;
  return `/academy/${encodeURIComponent(fundamentalId)}${of}`;
}

/** Tracks that belong to a group that may be told. */
export function tracksOf(tracks: readonly TrackSummary[], group: AcademyGroup | null): readonly TrackSummary[] {
  if (group === null) return tracks;
  return tracks.filter(
    ({ studentId, clubGroup }) => group.studentIds.has(studentId) && (group.club === null || group.club === clubGroup),
  );
}
