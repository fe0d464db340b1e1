import type { Fundamental } from "@/lib/domain/fundamental";
import { type RosterView, rosterQuery, WHOLE_ROSTER } from "@/lib/domain/roster-view";
import type { AcademyGroup, AcademyGroups } from "./academy-groups";
import type { RecordedCounts } from "./count-recorded";
import type { FilmState } from "./film-state";
import type { TrackSummary } from "./track-summary";

/** What an academy's page rests on, cut to the group that is asked for. */
export interface AcademySource {
  readonly academyName: string;
  readonly today: string;
  /** The first day of the season, or of the first film where that is later. */
  readonly from: string;
  /** Null: fewer than five students are here. */
  readonly groups: AcademyGroups | null;
  /** The group in force; null: everybody. */
  readonly group: AcademyGroup | null;
  readonly students: number;
  readonly tracks: readonly TrackSummary[];
  /** Of each fundamental how many students have a track of it that this group leaves out; who has none isn't in it. */
  readonly leftOut: ReadonlyMap<string, number>;
  /** What came of each film of the latest weeks. */
  readonly films: readonly FilmState[];
  /** Weeks of films that are counted, and without proof. */
  readonly weeks: { readonly films: number; readonly stalled: number };
  readonly stalled: number;
  readonly fundamentals: readonly Fundamental[];
  /** What is recorded of whoever was filmed in those weeks: of everybody and each coach's by name, or of the group in force alone. */
  readonly recorded: readonly RecordedRow[];
}

/** What is recorded of some students; null: of everybody. */
export interface RecordedRow {
  readonly group: AcademyGroup | null;
  readonly counts: RecordedCounts;
}

/** The roster cut to the group in force, and to more. */
export function rosterOf({ group }: Pick<AcademySource, "group">, more: Partial<RosterView>): string {
  return `/students?${rosterQuery({ ...WHOLE_ROSTER, ...group?.view, ...more })}#roster`;
}
