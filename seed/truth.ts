import type { FundamentalId } from "@/lib/domain/fundamental";
import type { Verdict } from "@/lib/domain/track-verdict";
import { seasonDay } from "./demo-entries";
import type { StudentPlan, TrackPlan } from "./demo-plan";
import { DEMO_STUDENTS } from "./demo-roster";
import { levelAt } from "./level-path";

/** What is true of one track of the demo; it lies beside the data and is never entered. */
export interface TrackTruth {
  readonly studentId: string;
  readonly fundamentalId: FundamentalId;
  /** True level at each session of the student, whatever its circumstances; the camera's part is no part of it. */
  readonly levels: readonly { readonly day: string; readonly level: number }[];
  /** Day of the first session on another level than the one before; null: it never changes. */
  readonly changesOn: string | null;
  /** Words that the story wants at the end; null: it has no story. */
  readonly words: readonly Verdict[] | null;
}

function trackTruth(plan: StudentPlan, fundamentalId: FundamentalId, parts: readonly TrackPlan[]): TrackTruth {
  const levels = plan.sessions.map((session, i) => ({
    day: seasonDay(session.day),
    level: parts.reduce((sum, part) => sum + levelAt(part.path, i), 0),
  }));
  const changed = levels.find(({ level }, i) => i > 0 && level !== levels[i - 1]?.level);
  return {
    studentId: plan.id,
    fundamentalId,
    levels,
    changesOn: changed?.day ?? null,
    words: plan.expected.find((expected) => expected.fundamentalId === fundamentalId)?.words ?? null,
  };
}

/** The truth of every track of the demo; side tilt at the top is the sum of set-up and what is kept of it. */
export function demoTruth(): readonly TrackTruth[] {
  return DEMO_STUDENTS.flatMap((plan) => {
    const tracks = plan.tracks.map((track) => trackTruth(plan, track.fundamentalId, [track]));
    const top = plan.tracks.filter((track) => ["setup-tilt", "tilt-kept"].includes(track.fundamentalId));
    return top.length === 2 ? [...tracks, trackTruth(plan, "top-tilt", top)] : tracks;
  });
}
