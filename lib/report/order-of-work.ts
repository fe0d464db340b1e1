import type { Fundamental } from "@/lib/domain/fundamental";
import { choosePriority, type Priority, type WorkCircumstances } from "@/lib/verdict/choose-priority";
import type { WorkItem } from "@/lib/verdict/work-standing";
import type { TrackSummary } from "./track-summary";

/** A track with its fundamental, in the order of work. */
export interface RankedTrack {
  readonly fundamental: Fundamental;
  readonly summary: TrackSummary;
}

/** A fundamental of the academy with the track that was measured of it. */
export interface WorkTrack extends WorkItem {
  readonly fundamental: Fundamental;
  /** Null: not measured with these clubs. */
  readonly summary: TrackSummary | null;
}

/** What decides of one student's work with one group of clubs, beside what was measured. */
export interface WorkFacts extends WorkCircumstances {
  /** How often a film of a fundamental was asked for and has not come, by id; absent: never. */
  readonly asked: ReadonlyMap<string, number>;
}

/** Nothing stops the work, nobody chose, nothing was asked for. */
export const NO_WORK_FACTS: WorkFacts = { stop: null, chosenId: null, asked: new Map() };

/**
 * The one thing in hand with one group of clubs, what is kept beside it and what stops it: the same answer on every page.
 *
 * @param fundamentals all of the academy: what isn't measured is missed only where it stands here
 * @param tracks what was measured with the clubs
 */
export function chooseWork(
  fundamentals: readonly Fundamental[],
  tracks: readonly RankedTrack[],
  facts: WorkFacts = NO_WORK_FACTS,
): Priority<WorkTrack> {
  return choosePriority(
    fundamentals.map((fundamental): WorkTrack => {
      const summary = tracks.find((track) => track.fundamental.id === fundamental.id)?.summary ?? null;
      return {
        fundamental,
        summary,
        verdict: summary?.verdict ?? null,
        askedFor: facts.asked.get(fundamental.id) ?? 0,
        lastDay: summary?.sessions.at(-1)?.date ?? null,
      };
    }),
    facts,
  );
}
