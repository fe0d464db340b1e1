import type { Asking } from "@/lib/domain/asking";
import type { ConsentStanding } from "@/lib/domain/consent";
import type { Fundamental } from "@/lib/domain/fundamental";
import type { Student } from "@/lib/domain/student";
import type { Position } from "@/lib/domain/track-verdict";
import type { WorkFacts } from "./order-of-work";
import type { Link, RosterPage } from "./page-model";
import type { PagesShown } from "./roster-pages";
import type { RosterTools } from "./roster-tools-model";
import type { TrackSummary } from "./track-summary";

/** One student of a roster with what was measured. */
export interface RosterStudent {
  readonly student: Student;
  readonly sessions: number;
  readonly lastDay: string | null;
  readonly lastClub: string | null;
  /** Solid strikes of balls hit over the latest sessions with a count; null: none counted. */
  readonly contact: { readonly solid: number; readonly balls: number } | null;
  /** Of the club group in hand, in the order of work. */
  readonly summaries: readonly TrackSummary[];
  /** Decisions on the student's questions, oldest first. */
  readonly askings: readonly Asking[];
  /** What decides of the one in hand beside what was measured; absent: nothing. */
  readonly work?: WorkFacts;
}

/** A proved change on the roster's list that the viewer has not pressed "seen" on. */
export interface NewProof {
  readonly key: string;
  readonly student: Student;
  readonly fundamental: Fundamental;
  readonly summary: TrackSummary;
}

/** A track with an alarm of the watch over what is owned. */
export interface WatchedTrack {
  readonly student: Student;
  readonly fundamental: Fundamental;
  readonly summary: TrackSummary;
}

/** Everything that the roster page rests on. */
export interface RosterSource {
  readonly families: RosterPage["families"];
  readonly academyName: string;
  readonly students: readonly RosterStudent[];
  /** Students in all, on this and other pages. */
  readonly total: number;
  /** Of all pages: whose consent stands where. */
  readonly consents: readonly { readonly student: Student; readonly consent: ConsentStanding }[];
  /** Whoever has left: how many, and the link that shows or hides them. */
  readonly departed: { readonly count: number; readonly shown: "yes" | "no"; readonly href: string };
  readonly proofs: readonly NewProof[];
  readonly fundamentals: readonly Fundamental[];
  /** The fundamental that the roster is filtered by, which stands among the columns; null: by none. */
  readonly asked: string | null;
  readonly seen: { readonly day: string } | null;
  readonly counts: {
    readonly gain: number;
    readonly slip: number;
    readonly steady: number;
    readonly open: number;
    readonly moved: number;
  };
  /** Where those tracks lie. */
  readonly places: Readonly<Record<Position, number>>;
  readonly from: string;
  readonly asOf: string;
  readonly today: string;
  readonly sort: readonly (Link & { readonly current: "yes" | "no" })[];
  /** What finds, filters and orders them, in words. */
  readonly tools: RosterTools;
  /** Where the rows are had as a file. */
  readonly csv: string;
  /** Of all that the filters leave: which part this page shows, and the pages that it leads to. */
  readonly pages: PagesShown & {
    readonly of: number;
    readonly links: readonly (Link & { readonly current: "yes" | "no" })[];
  };
}
